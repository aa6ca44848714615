### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Português
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = Tenho diabetes tipo 1.
stranger-failed = A minha bomba de insulina pode ter falhado.
stranger-low = Acordado, mas a tremer ou confuso? Dê-me açúcar.
stranger-unwell = Vómitos, sonolência ou respiração rápida? Chame uma ambulância.
stranger-say = Diga «cetoacidose, falha da bomba».
stranger-no-inject = Não me dê nenhuma injeção.
stranger-call = Ligue para { $name }: { $phone }
stranger-basal = Hospital: nunca suspender a insulina basal.
stranger-normal = Uma glicemia normal não exclui cetoacidose.
stranger-test = Medir as cetonas no sangue.
unchecked = Tradução ainda não verificada por um profissional de saúde.
