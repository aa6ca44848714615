### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = العربية
# ltr or rtl: which way the language is written.
direction = rtl
stranger-type = أنا مصاب بالسكري من النوع الأول.
stranger-failed = ربما تعطلت مضخة الأنسولين.
stranger-low = مستيقظ لكن أرتجف أو مشوش؟ أعطني سكرًا.
stranger-unwell = قيء أو نعاس أو تنفس سريع؟ اتصل بالإسعاف.
stranger-say = قل: «حماض كيتوني، تعطل المضخة».
stranger-no-inject = لا تحقنّي بشيء.
stranger-call = اتصل بـ { $name }: { $phone }
stranger-basal = للمستشفى: لا توقفوا الأنسولين القاعدي أبدًا.
stranger-normal = الجلوكوز الطبيعي لا ينفي الحماض الكيتوني.
stranger-test = افحصوا الكيتونات في الدم.
unchecked = لم يراجع طبيب هذه الترجمة بعد.
