### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = 简体中文
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = 我患有1型糖尿病。
stranger-failed = 我的胰岛素泵可能已失灵。
stranger-low = 清醒但发抖或糊涂？请给我糖。
stranger-unwell = 呕吐、嗜睡或呼吸急促？请叫救护车。
stranger-say = 请说：“酮症酸中毒，胰岛素泵故障”。
stranger-no-inject = 请不要给我打针。
stranger-call = 请致电 { $name }：{ $phone }
stranger-basal = 医院：切勿停用基础胰岛素。
stranger-normal = 血糖正常不能排除酮症酸中毒。
stranger-test = 请检测血酮。
unchecked = 译文尚未经临床医生核对。
