### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = Türkçe
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = Tip 1 diyabetim var.
stranger-failed = İnsülin pompam bozulmuş olabilir.
stranger-low = Uyanık ama titrek ya da şaşkın mıyım? Bana şeker verin.
stranger-unwell = Kusma, uyku hali ya da hızlı soluma? Ambulans çağırın.
stranger-say = “Ketoasidoz, pompa arızası” deyin.
stranger-no-inject = Bana iğne yapmayın.
stranger-call = Arayın: { $name }, { $phone }
stranger-basal = Hastane: bazal insülini asla kesmeyin.
stranger-normal = Normal glikoz ketoasidozu dışlamaz.
stranger-test = Kanda keton ölçün.
unchecked = Çeviri henüz bir sağlık uzmanınca kontrol edilmedi.
