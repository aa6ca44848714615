### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Français
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = J’ai un diabète de type 1.
stranger-failed = Ma pompe à insuline est peut-être en panne.
stranger-low = Je suis éveillé, mais tremblant ou confus ? Donnez-moi du sucre.
stranger-unwell = Vomissements, somnolence ou respiration rapide ? Appelez une ambulance.
stranger-say = Dites « acidocétose, panne de pompe ».
stranger-no-inject = Ne me faites pas d’injection.
stranger-call = Appelez { $name } : { $phone }
stranger-basal = Hôpital : n’arrêtez jamais l’insuline basale.
stranger-normal = Une glycémie normale n’exclut pas l’acidocétose.
stranger-test = Mesurez les cétones dans le sang.
unchecked = Traduction pas encore vérifiée par un soignant.
