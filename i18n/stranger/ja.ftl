### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = 日本語
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = 私は1型糖尿病です。
stranger-failed = インスリンポンプが故障したかもしれません。
stranger-low = 意識はあるが、震えや混乱がある？ 砂糖をください。
stranger-unwell = 嘔吐、眠気、速い呼吸がある？ 救急車を呼んでください。
stranger-say = 「ケトアシドーシス、ポンプ故障」と伝えてください。
stranger-no-inject = 私に注射をしないでください。
stranger-call = 電話：{ $name } { $phone }
stranger-basal = 病院へ：基礎インスリンを決して中止しないでください。
stranger-normal = 血糖値が正常でもケトアシドーシスは否定できません。
stranger-test = 血中ケトン体を測ってください。
unchecked = この訳はまだ医療者の確認を受けていません。
