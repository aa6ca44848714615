### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Polski
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = Mam cukrzycę typu 1.
stranger-failed = Moja pompa insulinowa mogła się zepsuć.
stranger-low = Jestem przytomny, ale drżę lub jestem zdezorientowany? Podaj mi cukier.
stranger-unwell = Wymioty, senność lub szybki oddech? Wezwij karetkę.
stranger-say = Powiedz: „kwasica ketonowa, awaria pompy”.
stranger-no-inject = Nie rób mi zastrzyku.
stranger-call = Zadzwoń: { $name }, { $phone }
stranger-basal = Szpital: nigdy nie odstawiać insuliny bazowej.
stranger-normal = Prawidłowa glukoza nie wyklucza kwasicy ketonowej.
stranger-test = Zbadać ketony we krwi.
unchecked = Tłumaczenie jeszcze niesprawdzone przez lekarza.
