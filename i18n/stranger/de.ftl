### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Deutsch
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = Ich habe Diabetes Typ 1.
stranger-failed = Meine Insulinpumpe ist vielleicht ausgefallen.
stranger-low = Wach, aber zittrig oder verwirrt? Geben Sie mir Zucker.
stranger-unwell = Erbrechen, Schläfrigkeit oder schnelle Atmung? Rufen Sie einen Rettungswagen.
stranger-say = Sagen Sie: „Ketoazidose, Pumpenausfall“.
stranger-no-inject = Spritzen Sie mir nichts.
stranger-call = Rufen Sie an: { $name }, { $phone }
stranger-basal = Krankenhaus: Niemals das Basalinsulin absetzen.
stranger-normal = Ein normaler Blutzucker schließt eine Ketoazidose nicht aus.
stranger-test = Ketone im Blut messen.
unchecked = Übersetzung noch nicht von einer medizinischen Fachperson geprüft.
