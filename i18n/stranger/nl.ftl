### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Nederlands
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = Ik heb diabetes type 1.
stranger-failed = Mijn insulinepomp werkt misschien niet meer.
stranger-low = Wakker, maar bibberig of verward? Geef mij suiker.
stranger-unwell = Braken, sufheid of snelle ademhaling? Bel een ambulance.
stranger-say = Zeg: ‘ketoacidose, pomp defect’.
stranger-no-inject = Geef mij geen injectie.
stranger-call = Bel { $name }: { $phone }
stranger-basal = Ziekenhuis: stop nooit de basale insuline.
stranger-normal = Een normale glucose sluit ketoacidose niet uit.
stranger-test = Meet ketonen in het bloed.
unchecked = Vertaling nog niet nagekeken door een zorgverlener.
