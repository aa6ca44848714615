### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Italiano
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = Ho il diabete di tipo 1.
stranger-failed = Il mio microinfusore di insulina potrebbe essere guasto.
stranger-low = Sono sveglio, ma tremo o sono confuso? Datemi zucchero.
stranger-unwell = Vomito, sonnolenza o respiro rapido? Chiamate un’ambulanza.
stranger-say = Dite «chetoacidosi, guasto del microinfusore».
stranger-no-inject = Non fatemi iniezioni.
stranger-call = Chiamate { $name }: { $phone }
stranger-basal = Ospedale: non sospendere mai l’insulina basale.
stranger-normal = Una glicemia normale non esclude la chetoacidosi.
stranger-test = Misurare i chetoni nel sangue.
unchecked = Traduzione non ancora controllata da un medico.
