### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Español
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = Tengo diabetes tipo 1.
stranger-failed = Mi bomba de insulina puede haber fallado.
stranger-low = ¿Despierto, pero tembloroso o confuso? Deme azúcar.
stranger-unwell = ¿Vómitos, somnolencia o respiración rápida? Llame a una ambulancia.
stranger-say = Diga «cetoacidosis, fallo de la bomba».
stranger-no-inject = No me inyecte nada.
stranger-call = Llame a { $name }: { $phone }
stranger-basal = Hospital: no suspenda nunca la insulina basal.
stranger-normal = Una glucosa normal no descarta la cetoacidosis.
stranger-test = Mida las cetonas en sangre.
unchecked = Traducción aún no revisada por un profesional sanitario.
