### What a stranger reads, in one language of a journey. The English of each sentence stands in ../en.ftl under the same id.
### Short and plain; "Do not ..." in full. No clinician has checked it: `unchecked` says so on the card until one has.

language = हिन्दी
# ltr or rtl: which way the language is written.
direction = ltr
stranger-type = मुझे टाइप 1 डायबिटीज़ है।
stranger-failed = मेरा इंसुलिन पंप शायद खराब हो गया है।
stranger-low = होश में हूँ, पर काँप रहा हूँ या भ्रमित हूँ? मुझे चीनी दें।
stranger-unwell = उल्टी, सुस्ती या तेज़ साँस? एम्बुलेंस बुलाएँ।
stranger-say = कहें: “कीटोएसिडोसिस, पंप खराब”।
stranger-no-inject = मुझे कोई इंजेक्शन न दें।
stranger-call = फ़ोन करें: { $name }, { $phone }
stranger-basal = अस्पताल: बेसल इंसुलिन कभी बंद न करें।
stranger-normal = सामान्य ग्लूकोज़ से कीटोएसिडोसिस ख़ारिज नहीं होता।
stranger-test = ख़ून में कीटोन जाँचें।
unchecked = इस अनुवाद की जाँच अभी किसी चिकित्सक ने नहीं की है।
