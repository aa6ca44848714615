### The words of Stopgap, in English.
### For translators: people read this at three in the morning, half asleep and afraid. Short sentences, at most 15 words,
### active, one instruction each. "Do not ..." is written out every time. Never promise: no "safe", no "fixed".
### Texts in { $slots } come from the core or the plan and must stay. A dose is already written with its word "units".

## Said on every screen

# Foot of every screen; it leads to the danger page.
feel-worse = Feel worse than the numbers? Go.
# Button that telephones; below it stands who is called.
call = Call
# Button that telephones a named contact. $name: name of the contact or the number itself.
call-name = Call { $name }
# Beside a contact. $when: the hours as somebody wrote them in the plan.
ring-hours = Hours: { $when }
# Above the emergency number: nobody of the team is there at this hour.
ring-nobody = Nobody of your team answers at this hour.
# Label above the present clock time.
foot-now = Now
# Label above the clock time of the next check.
foot-next = Next look
# Label above the clock time of a check that is overdue.
foot-late = Look is late
# $clock: time the hold ends.
held-correction = Do not inject a correction before { $clock }.
# $clock: time the hold ends.
held-ketone = Do not inject for ketones before { $clock }.
# $clock: time the hold ends.
held-rapid = Do not inject rapid insulin before { $clock }.
# Button: one page back, nothing is lost.
back = Back
# Link to the page that needs no plan.
danger-page = When to call for help
# Link to the page that says what to do in a low.
low-page = When glucose is low
# Answer to any question.
do-not-know = I do not know
# Answer where several things could be ticked.
none-of-these = None of these
# A dose in words. $number: the amount, already written. The blank is a no-break space.
dose-text = { $number } units
# Exactly one unit. The blank is a no-break space.
dose-one = 1 unit
# Unit of insulin beside a number.
unit-units = units
# The same beside exactly one.
unit-unit = unit
# Unit of carbohydrate beside a number.
unit-grams = grams
# A reading. $value: number; $unit: mmol/L or mg/dL.
reading = { $value } { $unit }
# A written day. $day: 1 to 31, $month: m01 to m12, $year.
day = { $day } { $month ->
    [m01] January
    [m02] February
    [m03] March
    [m04] April
    [m05] May
    [m06] June
    [m07] July
    [m08] August
    [m09] September
    [m10] October
    [m11] November
   *[m12] December
  } { $year }
# Shown after something was written and read back. $clock: its time.
saved = Saved: { $clock }.

## First start and plans

# Heading of the first screen.
first-title = Stopgap
# What it is for.
first-what = It says what to do when an insulin pump stops delivering.
# Who it is for.
first-who = It follows a plan you agreed with your clinic, and no other.
# Button that opens the file chooser.
bring-plan = Bring a plan file
# Below that button.
bring-plan-sub = The file your clinic gave you, or a copy from another phone.
# Label above the demo plans.
first-demo = Or look round with an invented person
# Button.
demo-adult = Demo plan: an adult
# Below the button.
demo-adult-sub = Invented. Glucose in mmol/L. Not for use.
# Button.
demo-child = Demo plan: a child
# Below the button.
demo-child-sub = Invented. Glucose in mg/dL. Not for use.
# Caution on the first screen.
first-caution = Your clinic’s advice and local rules come first. Worse than the numbers say? Call.
# Frame on every page of a demo plan.
demo-warning = Invented person. Do not use these numbers for anyone.
# Button: other ways to bring a plan.
bring-otherwise = Bring a plan by code
# Below that button.
bring-otherwise-sub = With the camera, a photo, or as text.
# Size of a file. $count: number.
megabytes = { $count } MB
# Before a plan is taken in.
offered-ask = Is this the right person, and the newest plan?
# $count: number of entries in the record that comes with it.
offered-record = Its record comes with it: { $count } entries.
# Button that takes the demo plan in.
take-demo = Look round with this plan
# Button that takes a real plan in.
take-plan = Yes, this is my plan
# Button that leaves the offered plan aside.
leave-plan = No, leave it
# Heading: a file brought the record of another phone that uses the same plan.
join-title = Another phone’s record
# Whose. $name: person.
join-what = This file has a record of { $name }.
# $new: number of entries that are not here yet; $known: number of entries that are here already.
join-count = New here: { $new }. Known here: { $known }.
# In a frame: one entry has two contents, one here and one in the file.
join-differs = These entries differ. What stands here stays.
# Before the content that stands on this phone.
join-here = Here:
# Before the content that stands in the file.
join-there = In the file:
# What to do about them.
join-differs-do = Find out which is true. Write down what is missing here.
# The plan in the file is not the one in use.
join-other-plan = The file holds another plan. Yours stays in use.
# Button that adds them.
join-yes = Add the new entries
# Below it.
join-yes-sub = Nothing here is replaced.
# Button: the other plan is shown, with every value that differs.
join-see-plan = Look at the plan in the file
# Button that adds nothing.
join-no = No, add nothing
# Heading: done.
joined-title = The entries are added
# $count: number of entries.
joined-count = New here: { $count }.
# They were written and read back.
joined-kept = They are saved.
# They could not be written. They hold until the page is closed.
joined-not-kept = This phone could not save them. Keep the file.
# Button that goes on.
joined-on = Go on
# Button: plans that came in and were not taken.
aside-entry = Plans not in use
# Below it.
aside-entry-sub = They came in, but a number in them looks wrong.
# Label on the home page, above numbers of the plan in use.
home-findings = Show this to your clinic
# Below them.
home-findings-do = A number in your plan looks wrong. The plan stays in use. Ask by day.
# Label of the plan's revision and title.
plan-label = Plan
# $revision: number; $title: the plan's own title.
plan-revision = Revision { $revision }, { $title }
# Label of the date of birth.
plan-born = Born
# Label of the day of agreement.
plan-agreed = Agreed
# Label of who agreed.
plan-by = By
# $by: name; $role: profession.
plan-by-value = { $by }, { $role }
# Label of the review day.
plan-review = Review
# $day: a written day.
plan-review-value = by { $day }
# Head of every screen. $revision: number; $day: a written day.
plan-line = Plan { $revision }, { $day }

## A plan or an answer that is refused

# Heading.
refused-title = This cannot be used
# Under the heading, after a plan file.
refused-kept = Nothing was changed. What you had is still here.
# Under the heading, otherwise.
refused-call = Nothing was changed. Call your team if you need a dose.
# A file that is not JSON.
refused-not-json = The file cannot be read. It may be damaged.
# A file over the size limit.
refused-too-large = The file is too large.
# A file nested too deep.
refused-too-deep = The file is nested too deep.
# A key the format does not know.
refused-unknown-key = There is an entry this version does not know.
# The same key twice.
refused-duplicate-key = One entry stands there twice.
# A needed entry is not there.
refused-missing = Something is missing.
# Text where a number should be, or the like.
refused-wrong-type = This is not the right kind of entry.
# A unit that does not fit.
refused-wrong-unit = The unit is wrong.
# A number outside its limits.
refused-out-of-range = This is outside the limits.
# Too many decimals.
refused-too-precise = There are too many digits after the point.
# A list out of order.
refused-not-ascending = This list is not in order.
# One identity used twice.
refused-duplicate-id = Two entries have the same name.
# Two entries that cannot both hold.
refused-contradiction = Two entries contradict each other.
# Made by a later version.
refused-newer-format = This plan needs a newer version of the app.
# A check text or a signature does not fit.
refused-changed = It was changed or damaged on its way.
# Any other reason.
refused-other = This was not accepted.
# $got: what stood in the file.
refused-got = Found: { $got }.
# $accepted: what is possible.
refused-accepted = Possible: { $accepted }.

## Home

# The wide button that begins an incident.
start = Start
# Below it.
start-sub = High glucose, ketones, illness or pump failure.
# Button and heading: the record.
before = What happened before
# Below it. $count: number of entries.
before-count = Entries: { $count }
# Below it, and on the empty page.
before-none = Nothing is written down yet.
# Button: record a change outside the questions.
change-something = Write something down
# Below it.
change-something-sub = A new set, a pause, a dose, a mistake.
# Heading of that page.
change-title = What happened?
# Record: infusion set changed.
change-set = The set is changed
# Record: reservoir changed.
change-reservoir = The reservoir is changed
# Record: insulin in the reservoir changed.
change-insulin = New insulin from a new vial
# Record: pump off.
change-pump-off = The pump is off
# Record: pump on again.
change-pump-on = The pump is on again
# Record: the pump's own corrections are paused.
change-automation-paused = Automation is off
# Record: the pump's own corrections run again.
change-automation-on = Automation is on again
# Button: record a dose given.
change-dose = A dose was given
# Below it.
change-dose-sub = By the pump or by needle.
# Button: record a mistake.
change-mistake = Something went wrong with a dose
# Button and heading: settings.
more = More
# Below it.
more-sub = Copy, another plan, night look, remove.
# Button: save plan and record as one file.
export = Save a copy
# Below it.
export-sub = Plan and record in one file. Keep it elsewhere too.
# Button: hand the plan to another phone.
share-plan = Hand this plan over
# Below it.
share-plan-sub = As a code, as a file, or shared.
# Button that opens the file chooser: the saved copy of another phone that uses this plan.
join-entry = Add another phone’s record
# Below it.
join-entry-sub = From its saved copy. Nothing here is replaced.
# Button: bring another plan.
other-plan = Another plan
# Below it.
other-plan-sub = The record of this plan stays here.
# Button: look of the page.
night-look = Dark page at night
# Its state: by the clock.
night-auto = By the clock, from 21:00 to 07:00
# Its state: always dark.
night-on = Always dark
# Its state: always light.
night-off = Always light
# Button on a demo plan.
reset-demo = Begin the demo again
# Button on a real plan.
remove-all = Remove everything from this phone
# Below either.
remove-sub = Plans, record and answers.
# Heading of the page that asks once more.
remove-ask = Remove everything from this phone?
# What it means.
remove-what = Plans, record and answers go. They cannot be brought back without a copy.
# Below it. Students taken in by a school are removed one by one, there.
remove-not-school = A school’s students stay. Remove each one at the school.
# Button.
remove-yes = Yes, remove everything
# Button.
remove-no = No, keep it
# Note on storage that the browser promised to keep.
storage-firm = This phone has agreed to keep what you write.
# Note on storage that may be cleared.
storage-loose = This phone may clear what you write. Save a copy.
# Note where the browser does not say which of the two.
storage-unsaid = This browser does not say what it keeps. Save a copy.
# Label on the home page, above the copies that are still missing.
copies-title = Copies that last
# Why.
copies-why = A phone can break or get lost. Make these copies now.
# Below the button that leads to printing.
copies-no-card = No card of this plan was printed here yet.
# Below the button that saves plan and record as a file.
copies-no-file = No file of this plan was saved here yet.
# $engine: version of the core; $release: version of the page.
about = Core { $engine }, release { $release }.
# Button: a later release is here.
newer-version = A new version is ready
# Below it.
newer-version-sub = It changes nothing in plan or record.
# Heading above a list of what the new version changes.
newer-title = What is new
# Main button below the list.
newer-take = Use the new version
# Button: keep the version in use.
newer-not-now = Not now
# Below the buttons.
newer-later = It waits. The version in use goes on working.
# On the first page of each face: everything is kept here.
offline-yes = Works with no network: yes.
# The same line, for a moment, while it is looked through.
offline-asked = Works with no network: this is being checked.
# Reason: the first visit, or a file is fetched again.
offline-fetching = Works with no network: not yet, because files are still coming.
# Reason: a file was altered or cut off on its way, or on this phone.
offline-not-whole = Works with no network: not yet, because some files did not arrive whole.
# Reason: a private window, or a browser that keeps no pages.
offline-no-keeper = Works with no network: not yet, because this browser does not keep it.
# Reason: the page on the screen is not the version that is kept.
offline-other = Works with no network: not yet, because this page is another version.
# After each reason.
offline-do = Stay connected and open Stopgap again. Until then rely on your card.
# Frame when storage is refused.
nothing-kept = This phone keeps nothing now. Write down every dose and its time.

# Link to the desk, and the name of that face.
desk = Desk
# Below it.
desk-sub = Write, check and agree plans
# Link on the first page and at home: the face for a school.
school = School
# Below the link to the school.
school-sub = For staff: one student, by signed orders

# Link on the home page: the card and the sheets.
print-entry = Print the card
# Below it.
print-entry-sub = And sheets for the fridge, a journey, a school

# Button on the home page and between the looks.
off-entry = The pump stays off
# Below it.
off-entry-sub = Injections until a pump works again
# The same, where the record says that the pump is off.
off-entry-since = Written down as off since { $clock }
# The same, since another day than today.
off-entry-since-day = Written down as off since { $day }, { $clock }
# Warning above that button and on its pages. $clock: since when neither pump nor injection gave insulin for the background.
off-not-written = No basal insulin is written down since { $clock }. Do not inject double.
# The same, since another day than today. $day: which day; $clock: since when.
off-not-written-day = No basal insulin is written down since { $day }, { $clock }. Do not inject double.

## Another tab, storage, failure

# Heading: the version in use was found to be wrong, and another has taken its place.
withdrawn-title = This version was withdrawn
# Line below it.
withdrawn-what = It may be wrong. Do not use a dose from it.
# Line.
withdrawn-call = Not sure? Call your team first.
# Line: plan and record.
withdrawn-kept = Your plan and your record are kept.
# Main button: reads the page again, with the version that took its place.
withdrawn-again = Open the right version

# Heading in the second tab.
other-tab = This tab waits
# Why.
other-tab-why = Stopgap is open in another tab. Two tabs could write one dose twice.
# What to do.
other-tab-do = Go to the other tab, or close it.
# Heading when something could not be saved; its time and text follow in large type.
write-down = Write this down
# Why.
write-down-why = This phone could not save it. It is not kept here.
# Button.
written-down = I have written it down
# Heading when the page itself fails.
trouble = Stopgap cannot help now
# What to do.
trouble-what = Do not inject by guess. Call.
# Button.
trouble-again = Open it again
# Heading: entries of what happened are damaged on this phone. No dose is shown.
doubt-title = Part of the record is damaged
# Heading: the plan itself is damaged on this phone. No dose is shown.
doubt-plan-title = The plan here is damaged
# Button: take the plan in again from its file or code.
doubt-plan-bring = Take the plan in again
# Below it.
doubt-plan-bring-sub = From its file or code, or from your clinic.
# Button.
doubt-say = Say what was injected
# Button: the usual questions, which then find a low or an emergency.
doubt-questions = Answer the questions
# Below it.
doubt-questions-sub = They find a low or an emergency. They show no dose.
# Button: a file with everything as it lies on the phone, damaged parts too.
doubt-save = Save a raw copy
# Below it.
doubt-save-sub = All that lies here, as it is, for your clinic.
# Said after that file was made.
doubt-saved = The raw copy is made.
# Heading of a list of doses, the last one first.
doubt-written = Doses that can be read
# In place of that list.
doubt-none = No dose can be read here.
# Heading of a list.
doubt-damaged = Damaged, as it stands
# Heading: a question. $hours: how long a rapid injection counts.
doubt-ask = Which injections in the last { $hours } hours?
# The same, where no number of hours can be read.
doubt-ask-any = Which injections in the last day?
# Below it. $hours: how long long-acting insulin counts.
doubt-ask-long = Long-acting insulin: in the last { $hours } hours.
# Button: every injection was typed.
doubt-all = That is all of them
# Button.
doubt-nothing = Nothing was injected
# Below it, before the team was reached.
doubt-nothing-sub = First your team must answer a call.
# Below it, after the team answered.
doubt-nothing-called = Your team has answered.
# Heading of a list.
doubt-known = In the record already
# Heading of a list of damaged entries.
doubt-again = Damaged. Say these again if they are true.
# Heading.
doubt-call-first = First call your team
# Below it.
doubt-call-ask = Ask what may have been injected. Do not inject by guess.
# The entry could not be written.
doubt-not-kept = This could not be kept. Do not inject. Call your team.
# Note on the home page.
doubt-long-ago = An old entry is damaged. It changes no dose now.
# Heading: a question on a phone that is new. $hours: how long a rapid injection counts.
fresh-ask = Was insulin injected in the last { $hours } hours?
# Below it.
fresh-why = This plan is new here. This phone knows of no dose.
# Button.
fresh-yes = Yes
# Below it.
fresh-yes-sub = Type what was given, and when.
# Button.
fresh-no = No
# Below it.
fresh-no-sub = Nobody gave insulin by needle.
# Heading: the storage of the phone does not open.
shut-title = The record cannot be opened
# Below it.
shut-do = Doses may have been given. Do not inject.
# Line: the whole record is out of reach.
shut-what = The phone does not open what is kept here.
# Line: the plan is gone or damaged.
shut-plan = The plan that was kept here cannot be read.
# Line.
shut-call = Call your team. Tell them that the record is missing.
# Button to the page with telephone numbers.
shut-who = Whom to call
# Below it.
shut-who-sub = And when to go to hospital.
# Button.
shut-again = Try again
# Below it.
shut-again-sub = Close other tabs first. Then start the phone again.
# Heading: the core refuses record or plan.
unread-title = The record cannot be worked out

## Question 1: danger signs

# Question.
signs-question = Is any of these true now?
# Label of this answer.
signs-label = Signs
# Ticks of the question.
sign-fitting = Fitting, or cannot swallow
# The same two, apart, in the record.
sign-fitting-alone = Fitting
# The second of the two.
sign-swallow-alone = Cannot swallow
# A tick.
sign-drowsy = Drowsy, hard to wake
# A tick.
sign-confused = Confused
# A tick.
sign-breathing = Fast or deep breathing
# A tick.
sign-fluid = Cannot keep fluid down
# A tick.
sign-vomited-again = Vomited twice or more
# A tick.
sign-vomited-once = Vomited once
# A tick.
sign-belly = Belly pain
# A tick: unwell in any other way.
sign-unwell = Ill in another way
# Button once something is ticked.
signs-done = Yes, this is true now
# Heading after "I do not know".
unsure-signs = Not sure? Call someone now.
# Line.
unsure-signs-call = Call your team, or wake someone to look with you.
# Line.
unsure-signs-look = Look: breathing, waking, talking clearly, vomiting.
# Button.
unsure-signs-back = Look at the signs again
# Button: go on without an answer.
unsure-signs-on = Go on to the glucose
# Written answer of a question without ticks.
none = none
# Written answer of a question not known.
not-known = not known

## Question 2: glucose

# Question.
glucose-question = Glucose now
# Question after a washed finger.
glucose-again-question = Glucose, second test
# Question where there is no meter.
glucose-sensor-question = What does the sensor say?
# Help under the question.
glucose-help = From a washed, dried finger.
# Help when the other unit was chosen on purpose. $unit: that unit.
glucose-other-unit = You type in { $unit } now. The plan uses the other unit.
# Label of this answer.
glucose-label = Glucose
# Button that repeats the number. $value, $unit.
glucose-yes-finger = Finger: { $value } { $unit }
# Button that repeats the number. $value, $unit.
glucose-yes-sensor = Sensor: { $value } { $unit }
# Button: the meter shows HI instead of a number.
meter-hi = Meter says HI
# Button: the meter shows LO instead of a number.
meter-lo = Meter says LO
# Written answer. $word: HI or LO.
meter-says = Meter says { $word }
# Stands for the unit beside HI or LO in the record.
meter-word = on the meter
# Button.
no-meter = I have no meter
# Button where there is no meter.
no-sensor = No sensor either
# Button: type in the other unit. $unit: that unit.
switch-unit = My meter says { $unit }
# Question after HI.
hi-from = Where did you read HI?
# Question after LO.
lo-from = Where did you read LO?
# Button.
from-finger = On the meter, from a finger
# Button.
from-sensor = On the sensor
# Source of a reading, in the record.
finger = finger
# Source of a reading, in the record.
sensor = sensor
# Small button beside an earlier answer.
change-answer = Change
# Heading of the page with all answers.
answers-title = Your answers
# Below an answer. $clock: when it was given.
answers-at = At { $clock }. Tap to change it.
# Note on that page.
answers-note = The old answer stays in the record, struck.
# Button on an answer that is asked again.
keep-answer = Keep the answer I gave

## The keypad

# Name of the entry field for screen readers.
pad-entry = What you typed
# Name of the clock field.
pad-clock = The time you typed
# Under the empty field.
pad-empty = Type what you read.
# Under the clock field.
pad-clock-help = Four figures, as on the clock. 0210 is ten past two.
# No such time.
pad-clock-wrong = No clock shows that. Type four figures.
# Key.
pad-erase = Erase
# Name of the decimal key.
pad-mark = decimal point
# Too many digits.
pad-full = That is too long. Erase first.
# Something is missing, like the digit after the point.
pad-unfinished = Type the whole number.
# The core refuses the number. $accepted: the limits.
pad-refused = That cannot be. Possible: { $accepted }. Type it again.
# The digits, read out one by one.
digit-0 = zero
# A digit.
digit-1 = one
# A digit.
digit-2 = two
# A digit.
digit-3 = three
# A digit.
digit-4 = four
# A digit.
digit-5 = five
# A digit.
digit-6 = six
# A digit.
digit-7 = seven
# A digit.
digit-8 = eight
# A digit.
digit-9 = nine
# The decimal mark, read out.
digit-mark = point

## Question 3: ketones

# Question.
ketones-question = Blood ketones now
# Label of this answer.
ketones-label = Ketones
# Button that repeats the number. $value.
ketones-yes = Yes, ketones are { $value }
# Button.
ketones-not-yet = Not tested yet
# Button.
ketones-no-strips = I have no strips
# Button.
ketones-error = The strip failed
# Button: use a urine strip.
urine-instead = Urine strip
# Button: use the blood meter.
blood-instead = Blood meter
# Question.
urine-question = What does the urine strip say?
# Help.
urine-help = Read the colour at the time on the box.
# A strip word.
urine-negative = Negative
# A strip word.
urine-trace = Trace
# A strip word.
urine-small = Small
# A strip word.
urine-moderate = Moderate
# A strip word.
urine-large = Large

## Question 4: what is seen

# Question.
seen-question = What do you see?
# Label of this answer.
seen-label = Seen
# A tick.
seen-leak = Wet, or smells of insulin
# A tick.
seen-blood = Blood in tubing or cannula
# A tick.
seen-bent = The cannula is bent
# A tick.
seen-came-out = The cannula came out
# A tick.
seen-occlusion = The pump says blocked
# A tick.
seen-empty = No insulin left
# A tick.
seen-heated = The insulin got hot or froze
# A tick.
seen-dead = The pump is dead
# A tick: the pump offers no correction.
seen-offers-nothing = The pump offers no correction
# Button once something is ticked.
seen-done = I see this

## Question 5: what was given

# Question.
given-question = What insulin was already given?
# Help. $hours: how long the rapid insulin acts.
given-help = In the last { $hours } hours, and since the glucose went high.
# Button.
given-pump = A correction by the pump
# Button.
given-needle = An injection by needle
# Button.
given-automatic = The pump corrected by itself
# Button.
given-meal = Food insulin by the pump
# Button.
given-long = Long-acting insulin by needle
# Button.
given-mistake = Something went wrong with a dose
# Button: what the pump counts as still acting.
given-on-board = The pump shows insulin on board
# Below it. $dose: the amount typed.
given-on-board-is = Typed: { $dose }
# Button: food that will be eaten.
given-carbs = I will eat now
# Below it.
given-carbs-sub = Type the carbohydrate in grams.
# Below it. $grams: number typed.
given-carbs-is = Typed: { $grams } grams
# Button: since when glucose is high.
given-high-since = High since when?
# Below it. $clock: the time typed.
given-high-since-is = Since { $clock }
# Button and heading: rarer answers.
given-more = Something else
# Button: nothing was given.
given-nothing = Nothing
# Button: the list is whole.
given-done = That is all
# Button.
given-unsure = I am not sure
# Heading when nobody knows what was given.
unsure-given = Do not inject now
# In large type.
unsure-given-do = Nobody knows what is still working. Call first.
# Line.
unsure-given-look = Look: pump history, pen, syringe, the other parent.
# Line.
unsure-given-call = Test glucose every 15 minutes until you have called.
# Button: an amount is likely.
unsure-given-maybe = I know how much it may have been
# Below it.
unsure-given-maybe-sub = It then counts as given.
# Button.
unsure-given-back = I know now what was given
# Titles of the entry pages.
entry-pump = Correction by the pump: how many units?
# Title.
entry-needle = Injection: how many units?
# Title.
entry-automatic = By the pump itself: how many units?
# Title.
entry-meal = Food insulin by the pump: how many units?
# Title.
entry-long = Long-acting insulin: how many units?
# Title.
entry-maybe = How many units may it have been?
# Title.
entry-on-board = What does the pump show on board?
# Title.
entry-carbs = How much will you eat?
# Title.
entry-order = How many units did they order?
# Help.
entry-order-help = Of rapid-acting insulin.
# Heading: read to the team. $dose: amount with unit; $insulin: name.
order-said = { $dose } of { $insulin }
# Below it.
order-say = Say it back to them. Wait for their yes.
# Main button.
order-right = They said yes
# Button.
order-other = Another amount
# Title after a mistake.
entry-mistake = How many units went in that are not written here?
# Title after "another number".
entry-yes = How many units did you inject?
# Title.
entry-off-body = How many units did the pump give?
# Title.
entry-when = When was that?
# Title.
entry-high-since = Since when is glucose high?
# Title.
entry-glucose = What was the glucose then?
# Title. $units: a dose; $clock: a time.
entry-sure = { $units } at { $clock }: are you sure?
# Button.
entry-sure-yes = Yes, it was given
# Button.
entry-sure-no = I am not sure it was given
# Below it.
entry-sure-no-sub = It counts as given.
# Button that repeats the number. $dose.
entry-yes-units = Yes, { $dose }
# Button that repeats the number. $grams.
entry-yes-grams = Yes, { $grams } grams
# Button that repeats the reading. $value, $unit.
entry-yes-glucose = Yes, { $value } { $unit }
# Button that repeats the time. $clock.
entry-yes-clock = Yes, at { $clock }
# Button when that time was yesterday. $clock.
entry-yes-yesterday = Yes, yesterday at { $clock }
# Button.
just-now = Just now
# Button: at the time the dose was shown. $clock.
at-shown = At { $clock }
# Question.
mistake-question = What went wrong?
# Answer.
mistake-wrong = The wrong insulin
# Answer.
mistake-many = Too many units
# Answer.
mistake-twice = Given twice
# Answer.
mistake-off-body = Off-body insulin went into the body
# Question.
mistake-insulin = Which insulin went in?
# Answer. $name: the plan's insulin.
insulin-rapid = Rapid-acting: { $name }
# Answer. $name: the plan's insulin.
insulin-long = Long-acting: { $name }
# Answer where the plan names none.
insulin-long-any = Long-acting insulin
# In the record.
rapid-word = rapid-acting
# In the record.
long-word = long-acting

## Outcomes: headings and the line below

# Heading.
outcome-low-emergency = Call for help now
# Line.
line-low-emergency = Glucose may be very low. Do not give insulin.
# Heading.
outcome-emergency = Go to hospital now
# Line.
line-emergency = These signs or ketones need a hospital.
# Heading.
outcome-too-much = Too much insulin may be working
# Line.
line-too-much = Do not inject rapid insulin. Eat, and look often.
# Heading.
outcome-treat-low = Glucose is low
# Line.
line-treat-low = Do not inject insulin. Take sugar now.
# Heading.
outcome-eat-now = Eat now
# Line.
line-eat-now = Glucose will fall. Do not inject insulin.
# Heading.
outcome-no-plan = This plan may not be used
# Line.
line-no-plan = It is not agreed, or past its date. Do not inject by it. Call.
# Heading.
outcome-test-glucose = Test glucose from a finger
# Line.
line-test-glucose = A dose needs a number from a washed finger.
# Heading.
outcome-test-ketones = Test ketones now
# Line.
line-test-ketones = Do not inject before ketones are tested.
# Heading.
outcome-call-team = Call your team now
# Line.
line-call-team = Do not inject another dose before the call.
# Heading over the steps, where the dose itself has its own page.
outcome-inject = Inject by needle
# Heading.
outcome-coming-down = It is coming down
# Line.
line-coming-down = Ketones fall. Go on as the steps say.
# Heading.
outcome-eat-and-inject = Eat and inject
# Line.
line-eat-and-inject = Ketones need insulin, and insulin needs food now.
# Heading.
outcome-eat = Eat carbohydrate
# Line.
line-eat = Do not inject now. Ketones fall with food and the pump’s insulin.
# Line, in place of one that says not to inject: the pump is dead, and injecting for it is one of the steps.
line-bridge-in-steps = No insulin comes by itself now. Its injection is in the list.
# Heading.
outcome-wait = Wait for the next look
# Line.
line-wait = The pump’s correction is still working. Do not give another.
# Heading.
outcome-correct-by-pump = Correct once with the pump
# Line.
line-correct-by-pump = Ketones are low. Then look again at the time below.
# Heading.
outcome-off-pump = The pump is off
# Line.
line-off-pump = No insulin comes by itself now. Call your team.
# Heading.
outcome-change-set = Change the set now
# Line.
line-change-set = Do not inject now. Look again after the change.
# Heading.
outcome-over = The incident is over
# Line.
line-over = Glucose and ketones are down. Keep the next look.
# Heading.
outcome-look-again = Nothing found now
# Line.
line-look-again = Look again at the time below, or when you feel worse.
# Heading.
outcome-hold = Do not inject now
# Heading.
outcome-clock = Is this the right time?
# Heading: an entry of the record could not be read.
outcome-record = The record may not be whole
# Line.
line-record = Do not inject. Nobody knows here what is still working.
# Line on that page.
doubt-look = Look: pump history, pen, syringe, and whoever was there.
# Line on that page.
doubt-call = Call your team and tell them what you find.
# Heading, where the core asks it.
outcome-did-you-inject = Did you inject it?

## Cautions

# A caution.
caution-could-go-low = Glucose could go low. Have sugar ready. Somebody stays awake.
# A caution.
caution-in-grace = The plan is past its review day. Ask for a new one.
# A caution: a number in the plan in use looks wrong. What it is follows.
caution-plan-finding = A number in the plan looks wrong. Ask your clinic.
# A caution.
caution-stale-weight = Weight in the plan is old. Tell your team.
# A caution.
caution-cut = The plan’s limit made this dose smaller. Call your team.
# A caution.
caution-under-step = The dose is less than one mark. Do not draw it.
# A caution.
caution-sensor-only = This rests on a sensor alone. Call your team.
# A caution.
caution-no-strips = Ketones are not tested. Get strips.
# A caution.
caution-long-acting = Long-acting insulin went wrong. Call your team.
# A caution.
caution-new-line = The new set has not proved itself yet.

## Steps: what to do, and what is true after it

# $number: emergency number.
step-emergency-call = Call { $number }
# Words for the emergency call.
step-tell-them = “Type 1 diabetes. Ketoacidosis. Insulin pump failure.”
# Words for the emergency call when glucose is low.
step-tell-them-severe-low = “Type 1 diabetes. A severe low. Insulin pump.”
# $grams: sugar.
step-sugar = Take { $grams } grams of sugar now
# $glucagon: the plan's words for it.
step-glucagon = Give glucagon: { $glucagon }
# The person is drowsy or confused: whoever is there chooses between this step and the next. $glucagon: the plan's words for it.
step-glucagon-choose = Not awake or not swallowing: glucagon, { $glucagon }
# The other choice. $grams: sugar.
step-sugar-choose = Awake and swallowing: { $grams } grams of sugar
# Step.
step-retest = Wash a finger and test again
# Step.
step-test-ketones = Test ketones
# Step.
step-stop-pump = Stop the pump
# $name: the child; $born: date of birth.
step-confirm-child = Is this { $name }, born { $born }?
# $name and $phone of a contact.
step-call-home = Call home: { $name }, { $phone }
# $dose, $insulin: its name, $device: syringe or pen.
step-inject = Inject { $dose } of { $insulin } by { $device }
# $grams: carbohydrate.
step-eat = Eat { $grams } grams of carbohydrate
# Step.
step-change-set = Change the infusion set
# Step.
step-change-reservoir = New reservoir
# Step.
step-change-insulin = New vial, if in doubt
# $dose: what the pump gives away from the body.
step-off-body = Pump: { $dose } into a sink
# Step, after the pump gave a dose into a sink.
step-join-tubing = Join the tubing to the new set again
# $until: time.
step-automation-off = Automation off until { $until }
# Step.
step-drink = Drink water
# Step.
step-pump-correction = Give one correction by the pump
# $until: time.
step-wait = Wait until { $until }
# $at: time.
step-set-alarm = Set the alarm for { $at }
# Step: nobody of the team is there at this hour. $number: emergency number.
step-call-team-nobody = Nobody of your team answers now. Call { $number }
# $name and $phone of a contact.
step-call-team = Call { $name }, { $phone }
# Where the plan names no contact.
step-call-team-any = Call your diabetes team
# Where the plan names no contact.
step-call-home-any = Call home
# Step.
step-get-strips = Get ketone strips
# A tablet for diabetes; generic word.
step-stop-sglt2 = Stop the SGLT2 tablet
# Step.
step-long-acting = Long-acting insulin, if it takes long
# $hours: number. No name of an insulin here: another step on the same page may name the other one.
step-bridge = Injections in place of the pump, every { $hours } hours
# Step, while long-acting insulin is at work in place of the pump.
step-bridge-long = Insulin in place of the pump is in: see until when
# Step.
step-restock = Restock what was used
# Step.
step-close-incident = Close this incident
# In step-inject.
device-syringe = syringe
# In step-inject.
device-pen = pen
# Lines under a step.
lines-change-set-1 = New cannula.
# Line.
lines-change-set-2 = New place.
# Line.
lines-change-set-3 = New tubing, if it has one.
# Line.
lines-change-reservoir-1 = Fill a new one.
# Line.
lines-change-reservoir-2 = Do not reuse the old insulin.
# Line.
lines-change-insulin-1 = Heat, frost, age or lumps spoil insulin.
# Line.
lines-off-body-1 = Take the tubing off the body first.
# Line.
lines-off-body-2 = Let the pump give it into a sink.
# Line.
lines-off-body-3 = So the pump counts the injected dose.
# Line.
lines-join-tubing-1 = Look: no drops, no wet.
# Line.
lines-join-tubing-2 = Until it is joined, no insulin arrives.
# Line.
lines-automation-off-1 = Or the pump corrects the same high again.
# Line.
lines-drink-1 = Small sips, often.
# Line.
lines-pump-correction-1 = Take the pump’s own number. Do not give a second one.
# Line.
lines-set-alarm-1 = Use this phone’s own alarm. This page cannot wake you.
# Line.
lines-set-alarm-2 = A second person awake is better.
# Line.
lines-retest-1 = Dry the finger. Sugar on the skin reads high.
# Line.
lines-sugar-1 = Glucose tablets, juice or sugar. Do not inject.
# Lines under glucagon.
lines-glucagon-1 = Lay the person on one side.
# Line.
lines-glucagon-2 = Do not put anything in the mouth.
# Line under sugar in a severe low.
lines-sugar-swallow = Only if the person swallows well. Do not inject.
# Line.
lines-eat-1 = Something that works fast, like juice or bread.
# Line.
lines-get-strips-1 = A pharmacy, a neighbour or the hospital.
# Line.
lines-restock-1 = Set, reservoir, insulin, syringes, strips.
# Line.
lines-close-incident-1 = The record stays. Show it to your clinic.
# Line.
lines-long-acting-page = The next page says whether, when and how much.
# Line.
lines-bridge-page = The next page says when and how much.
# Line, at a school, where nobody works out such a dose.
lines-team-units = The team names the units.
# After the step.
done-emergency-call = The call is answered
# After the step.
done-tell-them = I have said it
# After the step.
done-sugar = The sugar is taken
# After the step.
done-glucagon = Glucagon is given
# Button under the step for glucagon: the other choice.
glucagon-not-needed = Awake and swallowing: sugar instead
# Button under the step for sugar: the other choice.
sugar-not-possible = Not awake or not swallowing: no sugar
# After the step.
done-retest = I will test again
# After the step.
done-test-ketones = Ketones are tested
# After the step.
done-stop-pump = The pump is stopped
# After the step.
done-confirm-child = Yes, this is the child
# After the step.
done-call = The call is answered
# After the step.
done-eat = It is eaten
# After the step.
done-change-set = The set is changed
# After the step.
done-change-reservoir = The reservoir is new
# After the step.
done-change-insulin = The insulin is new
# After the step.
done-off-body = The pump gave it
# After the step.
done-join-tubing = It is joined, and dry
# After the step.
done-automation-off = Automation is off
# After the step.
done-drink = I drink
# After the step.
done-pump-correction = The pump gave a correction
# After the step.
done-wait = I wait
# After the step.
done-set-alarm = The alarm is set
# After the step.
done-get-strips = I will get strips
# After the step.
done-stop-sglt2 = The tablet is stopped
# After the step.
done-long-acting-read = Long-acting insulin: I have seen it
# After the step.
done-bridge-read = Injections in place of the pump: I have seen them
# After the step.
done-restock = It is restocked
# After the step.
done-close-incident = Close it
# A step not done. $step: its words.
step-skipped = Not done: { $step }
# Button under a step.
step-cannot = I cannot do this now
# Below it.
step-cannot-sub = It stays on the list as not done.
# Button under the step for new insulin.
insulin-not-doubted = The insulin is in order
# Button: the pump reported another amount.
off-body-other = It gave another number
# Button that opens the dose page.
see-dose = See the dose
# A done step. $dose.
injected = Injected: { $dose }
# Button after the last step.
steps-over = All steps are seen
# Button.
call-answered = Answered
# Button.
call-no-answer = No answer
# Said after it.
no-answer-do = No answer is written down. Call again soon. Worse? Call the emergency number.
# Button: the team ordered a dose on the phone.
call-order = They ordered a dose
# Below it.
call-order-sub = Write it down, then inject it.
# Kept in the record.
order-text = Ordered on the phone.
# Kept in the record.
note-glucagon = Glucagon given.
# Kept in the record when an answer was changed.
strike-reason = Typed wrong, changed.
# Button and heading.
why = Why?
# Button on the steps.
change-answers = Change an answer

## The dose page

# Heading.
inject-now = Inject now
# Heading where the hospital comes first.
inject-on-the-way = Only for the way
# Line on that page.
way-line = Go now. Never inject instead of going.
# $insulin: its name.
by-needle = { $insulin }, by needle
# Line.
rapid-new-vial = Rapid-acting, from a new vial.
# $dose.
pen-dial = Dial { $dose } on the pen.
# $capacity: size of the syringe.
syringe-size = { $capacity }-unit syringe.
# $step: amount of a mark; $marks: how many marks, two or more.
syringe-marks = One mark: { $step }. Draw { $marks } marks.
# The same for a single mark.
syringe-mark = One mark: { $step }. Draw one mark.
# $rescue and $meal: the two parts of one dose.
parts = For the high: { $rescue }. For food: { $meal }.
# Button.
type-units = Type the units you see
# Button.
not-injecting = I do not inject
# Button.
use-pen = Use the pen
# Button.
use-syringe = Use the syringe
# Table heading for screen readers.
working = How it was worked out
# Line of the working.
working-correction = Correction
# Line.
working-on-board = Still working
# Line.
working-net = Correction left
# Line.
working-extra = For ketones
# Line.
working-cap = At most
# Line: the ketone share was larger.
chosen-extra = Greater: ketones
# Line: the correction was larger.
chosen-net = Greater: correction
# Last line.
working-total = Down to a mark
# The dose is the usual correction.
usual = Your usual correction
# $times: how many times.
times-usual = { $times } times your usual correction
# $dose: dose if the pump's doses counted the other way.
other-bound = Counting the pump’s doses the other way: { $dose }.
# Question.
typed-question = How many units do you see?
# Button that repeats the number. $dose.
typed-yes = I see { $dose }
# Heading. $typed: what was typed; $dose: the plan's dose.
different = You typed { $typed }. The plan says { $dose }.
# In large type.
different-look = Look again.
# Line.
different-do = Do not inject another number than the plan’s.
# Button.
look-again = Look again at the syringe
# Button. $typed.
different-given = I have already injected { $typed }
# Below it.
different-given-sub = It is written down as given.
# Heading. $dose.
inject-this = Inject { $dose } now
# Line.
inject-place = Into a new place, away from the set.
# Line.
inject-pump = Do not give it with the pump.
# Button. $dose.
have-injected = I have injected { $dose }
# Question.
refuse-question = You do not inject this dose?
# Line.
refuse-line = It is written down as not injected.
# Line.
refuse-call = Call your team if you are in doubt.
# Button.
refuse-wrong = No, I typed something wrong
# Button.
refuse-yes = No, I do not inject it
# Button.
back-to-dose = Back to the dose
# Said afterwards.
refused-recorded = Written down: not injected.
# Question after a return.
did-question = Did you inject it?
# $dose and $clock: when it was shown.
did-shown = { $dose } were shown at { $clock }.
# Button. $dose.
did-yes = Yes, { $dose }
# Button.
did-other = Yes, another number
# Button.
did-no = No, nothing was injected
# Button.
did-unsure = I am not sure
# Below it.
did-unsure-sub = It counts as given.
# Line.
did-look = Look: syringe, needle, vial, and whoever was there.
# Picture.
picture-syringe = { $capacity }-unit syringe, needle up, plunger at { $dose }
# Picture.
picture-strip = A ketone strip touching a drop of blood
# Picture.
picture-cannula = A new cannula, straight under the skin
# Picture.
picture-join = The tubing joined to the set on the body, with no drops
# Picture.
picture-edge = Read the edge of the plunger nearest the needle
# Label in the picture.
picture-edge-label = Read this edge

## Help

# Above the words to say.
say-these = Say these words
# Line.
help-wait = Do not wait for a number to fall.
# Line.
help-mouth = Cannot swallow? Do not give food or drink.
# Line.
help-low-insulin = Do not give insulin.
# Above what somebody else does during the call.
help-low-meanwhile = While somebody calls
# Line: fitting, or cannot swallow.
help-low-nothing = Do not put anything in the mouth.
# Line.
help-low-mouth = Give sugar only if the person swallows well.
# Button.
help-answered = The call is answered
# Below it, where a dose follows.
help-dose-sub = Next: a dose for the way. Never instead of going.
# Below it.
help-steps-sub = Next: what to do until help comes.
# Button.
help-no-answer = No answer yet, go on
# Button: the remaining questions.
help-test = Test while you wait
# Below it.
help-test-sub = Glucose and ketones, once the call is made.
# Line.
wash = Wash your hands with soap.
# Line.
dry = Dry them well.
# Button.
type-finger = Type the finger reading
# Button.
type-ketones = Type the ketones
# Button.
go-on-without = I cannot. Go on.
# Button: the questions go on, though no dose can follow.
go-on-tests = Test glucose and ketones
# Below it.
go-on-tests-sub = To know how soon you must call.
# Button.
cannot-test-call = I cannot test. What else?

## Hold, waiting, tubing, clock, why

# Label over the time.
hold-until = Hold until
# Label.
hold-given = Given
# $dose and $clock.
hold-given-value = { $dose } at { $clock }
# Label.
hold-why = Why
# Line.
hold-why-value = That dose is still working. A second one adds to it.
# Heading over a large clock time.
look-again-at = Look again at
# What to test.
look-both = Test glucose and ketones.
# What to test.
look-glucose = Test glucose.
# What to test.
look-ketones = Test ketones.
# After what to test: an injection in place of the pump is due at that time, too.
look-injects = Then the next injection: “The pump stays off”.
# Title of a later look.
look-later = Another look
# Heading. $clock: the look that is late.
late-title = The look of { $clock } is
# After a large number.
late-minutes = minutes late
# After a large number.
late-hours = hours late
# Heading where no look is planned.
no-look = No look is planned
# $minutes: number.
in-minutes = In { $minutes } minutes
# $hours and $minutes: numbers.
in-hours = In { $hours } h { $minutes } min
# Button, beside the ways to tell the pump and between the looks.
picture-entry = See insulin at work
# Below it.
picture-entry-sub = With the pump told, and not told
# $dose and $insulin.
given-by-needle = { $dose } of { $insulin } by needle
# Until that time.
until-correction = Until then, do not inject a correction.
# Until that time.
until-ketone = Until then, do not inject for ketones.
# Until that time.
until-automation = Until then, keep automation off.
# From that time: injected basal insulin works until then.
until-usual = A pump that works again runs as usual from then on.
# Until that time.
until-long = Until then, do not inject long-acting insulin again.
# Until that time.
until-rapid = Until then, do not inject rapid insulin.
# Button.
test-now = Test now
# Below it.
test-now-sub = Glucose first, then ketones.
# Button: steps are still open behind an overdue look.
back-to-steps = Back to the open steps
# Button: a look before its time.
test-early = Test now, before the look
# $clock: time of the alarm.
alarm-is-set = The alarm is set for { $clock }.
# Below the alarm button. $clock.
alarm-sub = Use this phone’s own alarm, { $clock }.
# Button on the step, before the pump gives anything.
tubing-look = Look at the end of the tubing
# Question, before the pump gives anything.
tubing-now = Where is the end of the tubing now?
# Help below it. $dose: what the pump will give.
tubing-before = Look before the pump gives { $dose }.
# Heading: the tubing is still on the body.
tubing-not-body = Do not let the pump give it
# In large type: the tubing is still on the body.
tubing-take-off = Take the tubing off the body first.
# In large type: nobody is sure where the end is.
tubing-find = Follow the tubing with your fingers to its end.
# Main button: the question once more.
tubing-again = Look at its end again
# Button: it is too late for the question. $dose: the amount.
tubing-given = The pump has already given { $dose }
# Below it.
tubing-given-sub = It is written down with where the end was.
# Answer.
tubing-sink = Over a sink
# Below it.
tubing-sink-sub = Away from the body
# Answer.
tubing-body = At the body
# Below it.
tubing-body-sub = Still joined to the cannula
# Answer.
tubing-unsure = I am not sure
# Line.
clock-look = Look at another clock.
# Line.
clock-set = Wrong here? Set this phone’s clock.
# Line.
clock-call = Cannot settle it? Do not inject. Call your team.
# Button.
clock-again = The clock is right now
# Question above the time of this phone in large figures: is the clock right?
time-question = Is this the time?
# Answer.
time-yes = Yes, it is
# Answer.
time-no = No, it is not
# Below the time: the clock of this phone was set while the page was open.
time-was-set = The clock of this phone was set.
# Below that question, when there was an injection. $text: what is written down, such as "Injected: 4 units, rapid"; $clock: when.
time-last = You wrote at { $clock }: { $text }.
# Button: the injection was at another time than is written down.
time-last-other = It was at another time
# Button: the questions about signs and glucose come first, the clock later.
time-test-first = Test first
# Title over the time that is wrong.
time-wrong = This is not the time
# Line.
time-set = Set the time in the settings of this phone.
# Below the question when that was. $clock: the time that is written down; $text: the entry, such as "Injected: 4 units, rapid".
when-written = Written down at { $clock }: { $text }.
# Below the time that the app thinks is right.
when-meant = By the time that has passed since
# Button: the written time is right. $clock.
when-as-written = At { $clock }, as written
# Button.
when-half = Half an hour ago
# Button.
when-one = 1 hour ago
# Button.
when-two = 2 hours ago
# Button: the time is typed in four figures.
when-type = Type the time
# In the record: why an entry was struck.
strike-clock = The clock was wrong.
# Title of a page with a call to the team: entries had wrong times.
tell-title = Call your team about the times
# Line below it.
tell-why = A dose was written down at a wrong time. Until they know, the later time counts.
# $rule: the rule's short name.
why-rule = Rule { $rule } decided. It rests on:
# $rule and $gate: short names of the rule and of what closed the way to a dose.
why-rule-gate = Rule { $rule } decided, then { $gate } held. It rests on:
# Names of facts.
fact-carbs = Food now
# A fact.
fact-unwell = Ill in another way
# A fact.
fact-mistake = Mistake
# A fact.
fact-on-board = Shown by the pump
# A fact.
fact-offers-nothing = Pump offers nothing
# A fact.
fact-high-since = High since
# A fact.
fact-with = Syringe or pen
# A fact.
fact-viewer = Who looks
# A fact: the day this version of the app was made; no right clock shows an earlier one.
fact-not-before = This version was made on
# A fact.
fact-agreement = Agreement
# A fact.
fact-pregnant = Pregnant
# A fact.
fact-sglt2 = SGLT2 tablet
# A fact.
fact-incident = Incident
# A fact.
fact-dose-shown = Dose shown
# A fact.
fact-dose-refused = Dose not injected
# A fact.
fact-injection = Injection
# A fact.
fact-pump-dose = Pump dose
# A fact.
fact-off-body = Off-body dose
# A fact.
fact-changed = Change
# A fact.
fact-automation = Automation
# A fact.
fact-pump = Pump on or off
# A fact.
fact-look = Planned look
# A fact.
fact-call = Call
# A fact.
fact-order = Order
# A fact.
fact-expires = Use-by day
# A fact.
fact-alarm = Alarm
# A fact.
fact-note = Note
# A fact.
fact-strike = Struck entry
# Value of a fact from the record. $clock: time of the latest one.
fact-last = { $clock }
# Value of a fact.
yes = yes
# Value of a fact.
no = no
# State of the plan.
status-draft = draft
# State of the plan.
status-agreed = agreed
# State of the plan.
status-superseded = replaced
# State of the plan.
status-withdrawn = withdrawn
# Who looks.
viewer-person = at home
# Who looks.
viewer-school = at school
# Where a fact comes from.
from-entered = you said
# Where a fact comes from.
from-recorded = from the record
# Where a fact comes from.
from-plan = from the plan

## The desk: what is found in a plan

# Each finding says what stands in the plan, then what would be accepted. Who reads it agrees plans: a clinician or an educator.
# Amounts in the slots are already written, doses with their word. Shown beside the field.
# $weight, $least, $most: kilograms; $years: the person's age.
finding-weight-for-age = { $weight } kg is unusual at { $years } years. We ask outside { $least } to { $most } kg.
# $measured, $agreed: days.
finding-measured-after-agreement = Measured on { $measured }, but agreed on { $agreed }. Measure first, then agree.
# $measured: a day; $days: how old the values are then; $limit: days.
finding-measured-long-ago = Weight and daily total of { $measured } are { $days } days old. Measure again after { $limit } days.
# $review, $agreed: days.
finding-review-far-ahead = The review on { $review } is over a year after { $agreed }. Choose an earlier day.
# $code: the number of a character, as Unicode writes it (U+200B). Nobody can see it, so two names can look the same.
finding-hidden-character = A character that nobody can see stands here: { $code }. Type the text again.
# $rule: which rule of ours is not agreed.
finding-house-rule-not-agreed = This rule of ours is not agreed yet: { $rule ->
    [rollingShare] a limit on all rescue doses together
    [matchedCarbohydrate] carbohydrate to match a dose
   *[extraNotReduced] insulin on board does not reduce the extra
  }. Agree it by name.
# $perKg: units for each kilogram and day; $total: a dose.
finding-daily-total-per-kg = { $total } a day is { $perKg } units for each kg. Usual is { $least } to { $most }.
# $total, $least, $most: doses.
finding-daily-total-unusual = { $total } a day is unusual. We ask outside { $least } to { $most }.
# $value, $yardstick: how far one unit brings glucose down; $total: a dose; $percent: of the yardstick.
finding-correction-factor-far-off = One unit lowers by { $value } here. For { $total } a day, the rule of thumb gives { $yardstick }. This is { $percent } % of it.
# $value: how far one unit brings glucose down.
finding-correction-factor-other-unit = { $value } looks like a number in the other glucose unit. Check the unit.
# $factor, $ratio: the two numbers as written.
finding-factor-and-ratio-swapped = Correction factor { $factor } and carbohydrate ratio { $ratio } look swapped. Exchange them.
# $value, $yardstick: grams for one unit; $total: a dose; $percent: of the yardstick.
finding-carbohydrate-ratio-far-off = One unit covers { $value } g here. For { $total } a day, the rule of thumb gives { $yardstick } g. This is { $percent } % of it.
# $basal, $total: doses; $percent: basal as part of the total; $least, $most: percent.
finding-basal-share = Basal adds up to { $basal } of { $total } a day: { $percent } %. Usual is { $least } to { $most } %.
# $target, $least, $most: glucose.
finding-target-unusual = A target of { $target } is unusual. We ask outside { $least } to { $most }.
# $target, $low: glucose.
finding-target-at-low = The target { $target } is not above low, { $low }. Choose a higher target.
# $target, $middle: glucose.
finding-target-at-middle = The target { $target } is not below the middle, { $middle }. Choose a lower target.
# $before, $after: clock times; $valueBefore, $valueAfter: the settings from then on; $times: how many times apart.
finding-schedule-jump = From { $before } it is { $valueBefore }, from { $after } it is { $valueAfter }. Neighbours are seldom over { $times } times apart.
# $night, $day: clock times; $valueNight, $valueDay: the settings from then on.
finding-night-stronger = { $valueNight } at { $night } doses more at night than { $valueDay } at { $day }. Nights are seldom stronger.
# $trigger, $most: glucose.
finding-trigger-late = A trigger of { $trigger } is late. Printed rules begin at { $most } or lower.
# $minutes, $latest: minutes.
finding-second-look-late = The second look is after { $minutes } minutes. Choose { $latest } or less.
# $minutes, $latest: minutes.
finding-look-after-dose-late = The first look after a dose is after { $minutes } minutes. Choose { $latest } or less.
# $expected, $most: falls of glucose; $minutes: minutes.
finding-expected-fall-too-large = A fall of { $expected } cannot be expected by { $minutes } minutes. Choose { $most } or less.
# $from, $least, $most: ketones in mmol/L.
finding-act-from-unusual = Acting from ketones of { $from } is unusual. We ask outside { $least } to { $most }.
# $ketones, $ketonesBefore: ketones in mmol/L.
finding-calls-not-rising = Ketones of { $ketones } lead to a less urgent call than { $ketonesBefore }. Make it as urgent or more.
# The plan tests with strips.
finding-strips-without-rows = The plan tests with strips, but no row names a strip. Add the words.
# The plan tests with strips.
finding-strips-lag = Strips lag behind by hours. Blood ketones are better.
# The plan has no ketone test.
finding-no-ketone-test = This person has no ketone test. Ketones then stay unknown at night.
# $ketones, $ketonesBefore: ketones in mmol/L; $extra, $extraBefore: doses; $glucose: where.
finding-extras-not-rising = At { $glucose }, ketones of { $ketones } give { $extra }. Ketones of { $ketonesBefore } give { $extraBefore }. More ketones must not give less.
# $ketones: in mmol/L; $extra, $extraBefore: doses; $glucose: from where on.
finding-extra-falls-with-glucose = From { $glucose } the extra is { $extra }, below it { $extraBefore }. Check for a slipped column.
# Pregnant, or taking an SGLT2 inhibitor.
finding-no-dose-at-any-glucose = With this risk, ketones need a dose at any glucose. Enter that dose.
# $extra, $step: doses.
finding-extra-under-step = This extra comes to { $extra }, less than one mark, { $step }. Choose more, or none.
# $extra, $left: doses.
finding-rounding-loss = This extra of { $extra } is drawn as { $left }. Use a finer device, or another number.
# $extra, $cap: doses.
finding-cap-under-extra = This extra of { $extra } is cut to { $cap }. Check the extra and the limit.
# $ketones: in mmol/L.
finding-cell-never-used = Nothing ever leads to this cell in the row from { $ketones }.
# $dose: a dose; $glucose, $low: glucose; $ketones: in mmol/L; $at: a clock time.
finding-dose-could-go-low = { $dose } at { $glucose } could lead to { $low } or lower, if nothing is eaten.
# $dose, $ceilingDose: doses; $ceiling: glucose.
finding-hi-gives-less = HI leads to { $dose }, but { $ceiling } leads to { $ceilingDose }. HI should not give less.
# $dose, $ceilingDose: doses; $ceiling: glucose.
finding-hi-gives-far-more = HI leads to { $dose }, but { $ceiling } leads to { $ceilingDose }. HI is seldom worth so much more.
# $percent, $most: percent of the daily total.
finding-single-share-large = One dose may be { $percent } % of the daily total. We ask above { $most } %.
# $percent, $most: percent of the daily total.
finding-rolling-share-large = Doses together may be { $percent } % of the daily total. We ask above { $most } %.
# $slot: which of the two insulins of the plan; $name: as it was typed.
finding-insulin-of-the-other-kind = { $slot ->
    [rapid] { $name } is not rapid-acting. Do not enter it as rapid-acting insulin.
   *[other] { $name } is not long-acting. Do not enter it as long-acting insulin.
 }
# $slot: which of the two insulins of the plan; $name: as it was typed. Generic names are those without a brand.
finding-insulin-name-unknown = { $slot ->
    [rapid] { $name } is not a generic name of a rapid-acting insulin that we know. Check it.
   *[other] { $name } is not a generic name of a long-acting insulin that we know. Check it.
 }
# $cap, $capacity: doses.
finding-cap-over-device = This limit of { $cap } is more than the device holds, { $capacity }. Choose less.
# $low, $least: glucose.
finding-low-late = Low begins at { $low } here. Published levels begin at { $least }.
# $hours, $least, $most: hours.
finding-action-hours-unusual = { $hours } hours of action are unusual. We ask outside { $least } to { $most } hours.
# $hours, $limit: hours.
finding-action-hours-short = With { $hours } hours, too little insulin is counted late on. Measured action is nearer { $limit } hours or more.
# $hours, $least: hours.
finding-lock-short = A next correction after { $hours } hours is early. We ask under { $least } hours.
# $hours, $least: hours.
finding-repeat-short = A repeat after { $hours } hours is early. We ask under { $least } hours.
# $factor, $least, $most: multiples of the basal of a day.
finding-long-acting-factor-unusual = { $factor } times the basal is unusual. Printed factors are { $least } to { $most }.
# $from, $until: clock times of the night. "any hour" stays in English: it is what has to be typed.
finding-no-contact-at-night = Nobody can be called from { $from } to { $until }. Write "any hour", or times that cover it.
# $name: who is called; $phone: as it was typed.
finding-phone-unclear = "{ $phone }" of { $name } cannot be dialled. Write digits, spaces, hyphens and one + in front.
# $name: who is called; $relation: whether they are of the team; $number: the emergency number. What is quoted stays in English: it is
# what has to be typed.
finding-hours-unreadable = { $relation ->
    [team] The hours of { $name } cannot be read: rung first, at any hour, with { $number } beside it. Write "any hour", or "Mon-Fri 08:00-16:30".
   *[other] The hours of { $name } cannot be read. Write "any hour", or "Mon-Fri 08:00-16:30".
 }
# $days: whether it is so every day; $dayFrom, $dayUntil: days of the week, short; $from, $until: clock times; $instead: a name or the emergency number.
finding-no-team-at-some-hour = { $days ->
    [every] From { $from } to { $until } no team number answers. { $instead } is rung then.
   *[other] From { $dayFrom } { $from } to { $dayUntil } { $until } no team number answers. { $instead } is rung then.
 }
# The plan has no contact of the kind team.
finding-no-team-contact = No contact is the diabetes team. Add one, so that "Call the team" can call.
# The plan has school orders and no contact of the kind home.
finding-no-home-contact = The school has nobody to call at home. Add a contact at home.
# The plan has no emergency number.
finding-no-emergency-number = The emergency number is missing. Enter the one for this place.

## The desk: shelf, editor, review, agreement

# Name of the two links at the top, for screen readers.
desk-faces = Faces
# Link back to the face for the night.
desk-bedside = Bedside
# Stands for the name of a person who has none yet.
desk-no-name = No name yet
# $revision: number; $state: draft, agreed and so on.
desk-line = Revision { $revision }. { $state }.
# Warning when storage is refused.
desk-not-kept = What you type cannot be kept here. Save a file before you leave.
# Foot of every page of the desk.
desk-caution = This checks for slips. It does not replace your judgement or your local rules.
# Before the short check number of a plan.
fingerprint = Fingerprint
# State of a plan.
standing-draft = Draft, not in use
# State of a plan.
standing-agreed = Agreed
# State of a plan: its review date is near.
standing-review-due = Review due
# State of a plan: after the review date, in the days of grace.
standing-in-grace = In its days of grace
# State of a plan.
standing-expired = Expired
# State of a plan: a later revision took its place.
standing-superseded = Superseded
# State of a plan.
standing-withdrawn = Withdrawn
# Heading.
shelf-title = Plans on this machine
# Button.
shelf-new = Write a new plan
# Below it.
shelf-new-sub = It begins empty. No number is filled in.
# Button that opens the file chooser.
shelf-bring = Bring a plan from a file
# Below it.
shelf-bring-sub = A plan, or a copy with its record
# Label of the search field.
shelf-find = Find a name
# $text: what was looked for.
shelf-none-found = Nobody here is called “{ $text }”.
# Warning on the shelf: a sheet on this machine is damaged.
shelf-broken = The sheet of one person cannot be read. It is still kept.
# When the shelf is empty.
shelf-empty = No plan is here yet.
# Note below the list.
shelf-alone = Every plan stays on this machine. Nothing is sent to anybody.
# On a demo plan.
shelf-demo = Invented person
# $revision: number.
shelf-revision = Revision { $revision }
# $day: a written day.
shelf-review = Review by { $day }
# $revision: number of the revision being written.
shelf-draft-too = Revision { $revision } is being written
# The rules of the app changed since the plan was agreed.
shelf-engine = Look at the table again
# $day: a written day.
shelf-incident = Last incident { $day }
# No incident is recorded.
shelf-no-incident = No incident recorded here
# Below a person who has an incident in the record. $name: the person.
shelf-story = The last incident of { $name }
# $name: the person.
shelf-remove = Remove the data of { $name }
# Heading. $name: the person.
removal-title = Remove the data of { $name }?
# What it means.
removal-what = The plan, every revision and the record go. Nobody can bring them back.
# Where this device uses the plan at the bedside.
removal-in-use = This device uses this plan. That copy and its record stay. Remove them under “More”.
# Button.
removal-file = Save a file first
# Below it.
removal-file-sub = Plan, revisions and record in one file
# Button after a file was saved.
removal-yes = Remove everything
# Below it.
removal-yes-sub = The file you saved is the only copy left
# Button while no file was saved.
removal-yes-no-file = Remove without a file
# Below it.
removal-no-file-sub = No copy will be left
# Button.
removal-no = Keep everything
# Said afterwards. $name: the person.
removal-done = The data of { $name } is removed.
# Said after a file was offered for saving.
file-made = The file is made. Check that it was saved.
# Said after a file was read.
bring-done = The file is on the shelf.
# Entries with one id and two contents. $count: number of them.
bring-differ = Entries that differ stay as they are here: { $count }.
# After a file with a plan that cannot be agreed; below it stands why.
bring-held = The plan in the file is not taken in. It is kept as it came, and not used.
# The same, where nobody on the shelf has this plan.
bring-not-taken = The plan in the file is not taken in. Keep the file.
# Above numbers of a plan in a file; below them the plan is taken in or left.
bring-open = Nobody confirmed these numbers. Ask who agreed the plan.
# Button.
bring-leave = Do not take it in
# Button.
bring-take = Take it in all the same
# In the list of plans, before why. $revision: of the plan that is not used.
shelf-held = Revision { $revision } is kept and not used.
# A file with a draft, where a draft of the same plan is here already.
bring-draft-there = A draft of this plan is already here. Remove it first, or go on with it.
# Heading of the editor.
editor-title = The plan’s sheet
# Button.
editor-review = Review and agree
# Below it.
editor-review-sub = What stops it, what changed, who agrees
# Opens the list of parts.
editor-parts = Parts of the sheet
# $count: number.
count-missing = { $count } missing
# $count: number; there are more than the page counts.
count-missing-more = { $count } or more missing
# $count: number of things that stop agreement.
count-refused = { $count } to mend
# $count: number of numbers to type again.
count-retype = { $count } to retype
# Nothing is open.
count-none = Ready to review
# In an empty field on a phone.
field-type = Type
# First line of a choice.
field-choose = Choose
# Beside a field that may stay empty.
field-optional = may stay empty
# Before a range. $unit: a unit.
help-unit = In { $unit }.
# Under the glucose edges.
help-columns = Middle and trigger must be among them.
# Under them. $from: limits of a ketone edge; $repeat: limits of the hours.
help-rows = Ketone edges: { $from } Repeat after: { $repeat }
# $from, $to: limits.
range = { $from } to { $to }.
# $only: the one number that is possible.
range-only = Only { $only }.
# Where the limits follow from the unit.
range-unit-first = Choose the unit of glucose first.
# Unit of glucose while none is chosen.
unit-of-plan = in the unit of the plan
# $unit: unit of glucose.
unit-per-unit = { $unit } a unit
# Unit.
unit-grams-per-unit = grams a unit
# Unit.
unit-per-hour = units an hour
# Unit.
unit-hours = hours
# Unit.
unit-minutes = minutes
# Unit.
unit-kg = kg
# Unit.
unit-days = days
# Unit of ketones.
unit-ketones = mmol/L
# Unit of a share.
unit-share = of the daily total
# Unit.
unit-per-kg = units a kg
# Unit of a multiple.
unit-times = times
# Unit of strength.
unit-per-ml = units in 1 mL
# Button on the keypad page. $text: the number typed.
entry-put = Write { $text }
# Button on the keypad page.
entry-clear = Empty the field
# On the keypad page. $text: the number in the field.
entry-now = Now it says { $text }.
# Button on the keypad page.
entry-leave = Leave it as it was
# $name: the field; $nth: which of the list.
place-nth = { $name }, { $nth }
# $name: the field.
place-clock = { $name }, time
# $name: the field; $clock: time of day.
place-from = { $name } from { $clock }
# $name: the field; $ketones: edge of the row.
place-in-row = { $name }, ketones from { $ketones }
# A cell. $ketones, $glucose: its edges.
place-cell = Ketones from { $ketones }, glucose from { $glucose }
# The plan as a whole.
place-whole = The plan
# Small button.
list-remove = Remove
# The same for screen readers. $name: what.
list-remove-named = Remove { $name }
# Small button.
list-add-time = Add a time of day
# Small button.
list-add-look = Add a look
# Small button.
list-add-line = Add a line
# Small button.
list-add-contact = Add a contact
# Small button.
list-add-column = Add a glucose edge
# Small button.
list-add-row = Add a ketone row
# Who a contact is.
relation-team = The team
# Who a contact is.
relation-home = Home
# Who a contact is.
relation-other = Somebody else
# Under the field.
contact-when-help = “any hour”, or hours such as 20:00-08:00.
# Above a cell. $glucose: its edge.
kcell-from = Glucose from { $glucose }
# Way of counting a cell.
cell-none = No extra
# Way of counting a cell.
cell-share = Daily share
# Way of counting a cell.
cell-per-kg = Units per kg
# Way of counting a cell.
cell-times = Times correction
# Way of counting a cell.
cell-add = Correction plus
# Above the second choice of a cell.
cell-fallback = And where the correction is nothing:
# The same for screen readers. $name: the cell.
cell-fallback-named = { $name }, where the correction is nothing
# Name of the number of a cell. $name: the cell.
cell-amount = { $name }, amount
# Call of a row.
call-none = No call
# Call of a row.
call-team-word = Call the team
# Call of a row.
call-emergency-word = Call emergency
# Label of the choice.
published = A published table as a starting point
# First line of that choice.
published-none = None
# Under it.
published-help = Nothing of it is in the plan until you put each cell in.
# $source: short name of the source; $place: where in it; $mark: how well it was read.
published-source = Source { $source }: { $place }. Mark { $mark }.
# $unit: unit of the printed table.
published-other-unit = This table is printed in { $unit }. It is not converted.
# A table nobody could read in a copy.
published-memory = These rows are from memory only. They are off.
# Button.
published-memory-show = Show them all the same
# Beside a cell that says what is printed.
printed-same = In the plan as printed.
# Beside a cell.
printed-inactive = Printed, not in the plan.
# Button. $amount: the printed amount.
printed-put = Put in: { $amount }
# Button. $edge: ketones.
printed-row = Put in the ketone row from { $edge }
# Button. $edge: glucose.
printed-column = Put in the glucose edge { $edge }
# $number: share.
printed-share = { $number } of the daily total
# $number: units.
printed-per-kg = { $number } units a kg
# $number: multiple.
printed-times = { $number } times the correction
# $number: units.
printed-add = correction and { $number } more
# Printed beside an amount.
printed-recheck = Look again in 1 to 2 hours.
# Printed beside an amount.
printed-perhaps = Perhaps extra insulin, no number.
# Printed beside an amount.
printed-eat = With carbohydrate.
# Printed beside an amount.
printed-eat-insulin = Eat and take insulin, no number.
# Printed beside an amount.
printed-repeat = Repeat if needed.
# Printed beside an amount.
printed-meal = With the usual meal dose.
# Printed beside an amount.
printed-call = Call.
# Printed beside an amount.
printed-emergency = Emergency.
# Printed beside an amount.
printed-ordinary = The ordinary correction.
# Printed beside an amount: the page names no glucose.
printed-high = For a high glucose.
# Heading above the table of doses.
doses-title = What this plan leads to
# $insulin: its name.
doses-help = First dose of { $insulin } by needle. Framed: changed by the field in hand.
# While the plan cannot be read yet.
doses-not-yet = The table comes when nothing is missing.
# One table stands for the whole day.
doses-alike = Day and night alike
# Button. $clock: time of day.
doses-at = At { $clock }
# Head of the first column. $unit.
doses-glucose = Glucose, { $unit }
# Head of a column.
doses-usual = Usual correction
# Above the ketone columns.
doses-ketones = Ketones
# $from, $to: limits of a column.
column-range = { $from } to { $to }
# $from: lower limit of the last column.
column-up = { $from } and up
# Head of a column.
column-not-tested = Not tested
# $glucose: the level of a low.
row-low = { $glucose } or less
# A row of the table.
row-hi = HI, twice
# In a cell: go to hospital.
cell-emergency = go now
# In a cell, after a dose.
cell-and-go = and go
# In a cell.
cell-call = call
# In a cell, after a dose.
cell-and-call = and call
# In a cell.
cell-sugar = sugar
# In a cell.
cell-no-plan = no dose
# In a cell.
cell-finger = test finger
# In a cell.
cell-eat = eat
# $grams: carbohydrate.
cell-grams = { $grams } g
# In a cell.
cell-test = test
# In a cell.
cell-wait = wait
# In a cell.
cell-pump = by pump
# In a cell.
cell-off-pump = off pump
# In a cell.
cell-change = change set
# In a cell.
cell-look = look
# In a cell, where the dose itself is missing.
cell-inject = inject
# Under the table.
working-none = Choose a cell to see the rule behind it.
# $glucose, $ketones: the cell.
working-place = Glucose { $glucose }, ketones { $ketones }.
# $rule: its short name.
working-rule = Rule { $rule }:
# The ketone extra decided.
working-by-extra = The ketone extra is the greater.
# The correction decided.
working-by-net = The correction is the greater.
# $dose.
working-dose = It comes to { $dose }.
# $times: how many times.
working-times = That is { $times } times the usual correction.
# A limit of the plan cut the dose.
working-cut = A limit of the plan cut it.
# Rule, in a sentence.
rule-LWE = A grave sign and a low glucose: call emergency, no insulin.
# Rule, in a sentence.
rule-EMR = High ketones or a grave sign: go to hospital.
# Rule, in a sentence.
rule-TOO = Too much insulin is in: call, eat, look often.
# Rule, in a sentence.
rule-LOW = Glucose is low: sugar, no insulin.
# Rule, in a sentence.
rule-FAL = Not high, and it would go low: eat now.
# Rule, in a sentence.
rule-PLN = The plan is not in use: no dose.
# Rule, in a sentence.
rule-FNG = No reading to act on: test a finger.
# Rule, in a sentence.
rule-TST = Ketones matter and are not tested: test first.
# Rule, in a sentence.
rule-NOS = No strips, not high, but at risk: call the team.
# Rule, in a sentence.
rule-CAL = The doses allowed are given: call, no further number.
# Rule, in a sentence.
rule-ANY = Pregnant or on an SGLT2 inhibitor: insulin at any glucose.
# Rule, in a sentence.
rule-DWN = Ketones fall and glucose is not high: eat, with its insulin.
# Rule, in a sentence.
rule-KET = Ketones, and glucose in the middle or above: inject.
# Rule, in a sentence.
rule-EAT = Ketones, and glucose below the middle: eat, perhaps inject.
# Rule, in a sentence.
rule-INJ = High, and delivery cannot be trusted: inject, change the set.
# Rule, in a sentence.
rule-WAI = High, and a pump correction still works: wait.
# Rule, in a sentence.
rule-PMP = High and nothing else: one correction by the pump.
# Rule, in a sentence.
rule-SGN = A danger sign is left: call the team.
# Rule, in a sentence.
rule-OFF = The pump is off: the off-pump plan.
# Rule, in a sentence.
rule-CHG = A fault was seen: change what failed.
# Rule, in a sentence.
rule-END = The incident is over.
# Rule, in a sentence.
rule-NON = Nothing found: look again.
# Heading above the drawing.
curve-title = How long one unit works
# Below it.
curve-help = From the hours of action above. Of one unit there still works
# $hours: hours since; $units: part of a unit.
curve-hour = after { $hours } h { $units }
# Heading above what was found.
findings-title = What was found
# Nothing was found.
findings-none = Nothing was found. Look at the table all the same.
# The list is cut.
findings-more = More may follow when these are mended.
# $mark: how well it rests; $source: short name of the source.
ground-source = { $mark }, { $source }
# $mark: how well it rests.
ground-mark = { $mark }
# Label of a finding.
level-refuse = Refused
# Label of a finding.
level-confirm = Retype it
# Label of a finding.
level-note = Note
# Label of a finding that was settled with a reason.
level-settled = Retyped
# Label of an empty field.
level-missing = Missing
# Heading.
agree-title = Review and agree
# Below it.
agree-lede = Go down the page. The plan can be agreed when nothing stands open.
# Heading.
agree-refused-title = What stops it
# Nothing does.
agree-refused-none = Nothing stops it.
# Heading.
agree-retype-title = Numbers to retype
# Below it.
agree-retype-help = Type the number again from your own sheet, and say why.
# Nothing to retype.
agree-retype-none = No number has to be retyped.
# Label. $place: the field.
agree-retype-again = Type it again: { $place }
# $typed: what was typed.
agree-retype-differs = You typed { $typed }. The plan says something else. Look again.
# $reason: the reason given for the earlier revision.
agree-reason-before = The earlier revision says: { $reason }
# $reason: the reason of an earlier version of this program, which did not say what it was given for. The number is typed again.
agree-reason-earlier = Confirmed in an earlier version: { $reason }
# Label. $place: the field.
agree-reason = Why is it right: { $place }
# Heading. $revision: the earlier one.
agree-changes-title = Changes since revision { $revision }
# While the plan cannot be read.
agree-changes-not-yet = The changes come when nothing is missing.
# No change.
agree-changes-none = No value has changed.
# Tick below the changes.
agree-changes-seen = I have looked at every change
# Instead of an old value.
change-new = New:
# Instead of a new value.
change-gone = Taken out
# Heading.
agree-house-title = House rules
# Below it.
agree-house-help = No published text gives these. Agree to each by its name.
# House rule.
house-rollingShare = All doses within the hours of action stay under one share of the daily total.
# House rule.
house-matchedCarbohydrate = Insulin beyond the correction comes with carbohydrate that matches it.
# House rule.
house-extraNotReduced = Insulin on board does not make the ketone extra smaller.
# Heading.
agree-who-title = Who agrees, and when
# Tick. $name: the person; $day: the birth date; $years: their age on the day of agreement, a number.
agree-age = { $name } was born on { $day } and is { $years } years old.
# Under the field.
agree-on-help = Year, month, day. Type the day yourself.
# Heading above what is still open.
agree-open-title = Still open
# $count: number.
open-refused = { $count } things stop it.
# $count: number.
open-retype = { $count } numbers are not retyped with a reason.
# Still open.
open-changes = The changes are not looked at.
# The tick beside the age.
open-age = The age is not confirmed.
# $count: number.
open-house = { $count } house rules are not agreed.
# Still open.
open-who = Name and role are missing.
# Still open.
open-on = The day of agreement is missing or does not fit.
# Button. $revision: number.
agree-do = Agree revision { $revision }
# Below it.
agree-do-sub = An earlier agreed revision is then superseded
# Button.
agree-back = Back to the sheet
# Said afterwards.
agree-done = The plan is agreed. Hand it over, and print the card.
# $before, $now: versions of the rules.
engine-changed = The rules changed from { $before } to { $now }. Look at the table again.
# Button.
engine-looked = I have looked at the table
# Button.
agreed-go-on = Go on with the next revision
# Below it.
agreed-go-on-sub = It is being written
# Button.
agreed-revise = Write the next revision
# Below it.
agreed-revise-sub = It begins as a copy. This one stays in use.
# Button.
agreed-use-here = Use this plan on this device
# Below it.
agreed-use-here-sub = For the person’s own phone
# Button.
agreed-file = Save a file
# Button.
agreed-withdraw = Withdraw this plan
# Below it.
agreed-withdraw-sub = It then gives no dose
# Question.
withdraw-ask = Withdraw this plan? Copies on phones and on paper are not changed by it.
# Button.
withdraw-yes = Withdraw it
# Button.
withdraw-no = Leave it agreed
# Said afterwards.
withdraw-done = The plan is withdrawn. Tell everybody who has a copy.
# Heading of a part of the sheet.
desk-part-person = The person
# Under that heading.
desk-part-person-help = As they stand in the clinic today.
# Field.
field-name = Name
# What it is for, under the field.
field-name-help = As it stands in the clinic.
# Field.
field-born = Born
# What it is for, under the field.
field-born-help = Year, month, day, such as 1987-02-11.
# Field.
field-weight = Weight
# What it is for, under the field.
field-weight-help = Measured, not remembered. Doses by weight rest on it.
# Field.
field-measured = Measured on
# What it is for, under the field.
field-measured-help = The day of this weight and this daily total.
# Field.
field-pregnant = Pregnant
# What it is for, under the field.
field-pregnant-help = In pregnancy ketones rise sooner and at lower glucose.
# A choice.
desk-yes = Yes
# A choice.
desk-no = No
# Field.
field-sglt2 = Takes an SGLT2 inhibitor
# What it is for, under the field.
field-sglt2-help = With it ketones can rise at any glucose.
# Heading of a part of the sheet.
desk-part-agreement = The agreement
# Under that heading.
desk-part-agreement-help = Who agreed, and when, comes at the end.
# Field.
field-title = Title of the plan
# What it is for, under the field.
field-title-help = What it is for, such as “Everyday” or “Ferry weeks”.
# Field.
field-review-by = Review by
# What it is for, under the field.
field-review-by-help = At most a year after the day of agreement.
# Field.
field-grace = Days of grace
# What it is for, under the field.
field-grace-help = Days the plan still works after its review date.
# Heading of a part of the sheet.
desk-part-unit = The unit
# Under that heading.
desk-part-unit-help = Every glucose of this plan is in this unit.
# Field.
field-unit = Unit of glucose
# What it is for, under the field.
field-unit-help = The unit of the person’s own meter.
# A choice.
desk-unit-mmol = mmol/L
# A choice.
desk-unit-mg = mg/dL
# Field.
field-mark = Decimal mark
# What it is for, under the field.
field-mark-help = How the person writes two and a half.
# A choice.
desk-mark-point = 2.5 with a point
# A choice.
desk-mark-comma = 2,5 with a comma
# Heading of a part of the sheet.
desk-part-insulins = The insulins
# Under that heading.
desk-part-insulins-help = Generic names, as they stand on the box.
# Field.
field-rapid-name = Rapid-acting insulin
# What it is for, under the field.
field-rapid-name-help = The insulin of the pump and of the needle.
# Field.
field-rapid-strength = Strength, rapid-acting
# What it is for, under the field.
field-rapid-strength-help = Only one strength is possible here.
# Field.
field-rapid-action = Hours of action, rapid-acting
# What it is for, under the field.
field-rapid-action-help = How long a dose goes on lowering glucose.
# Field.
field-rapid-days = Days in use, rapid-acting
# What it is for, under the field.
field-rapid-days-help = How long an opened vial or pen may be used.
# Field.
field-long-name = Long-acting insulin
# What it is for, under the field.
field-long-name-help = Leave these five empty where there is none.
# Field.
field-long-strength = Strength, long-acting
# What it is for, under the field.
field-long-strength-help = Only one strength is possible here.
# Field.
field-long-action = Hours of action, long-acting
# What it is for, under the field.
field-long-action-help = How long one injection lasts.
# Field.
field-long-onset = Hours until it begins
# What it is for, under the field.
field-long-onset-help = Until then rapid-acting insulin bridges.
# Field.
field-long-days = Days in use, long-acting
# What it is for, under the field.
field-long-days-help = How long an opened vial or pen may be used.
# Heading of a part of the sheet.
desk-part-devices = Syringe and pen
# Under that heading.
desk-part-devices-help = What lies ready at home. One of them is needed.
# Field.
field-syringe-size = Size of the syringe
# What it is for, under the field.
field-syringe-size-help = The highest mark printed on it.
# Field.
field-syringe-step = One mark of the syringe
# What it is for, under the field.
field-syringe-step-help = What lies between two marks.
# Field.
field-pen-size = Most in one pen dose
# What it is for, under the field.
field-pen-size-help = The highest number the pen can be set to.
# Field.
field-pen-step = One click of the pen
# What it is for, under the field.
field-pen-step-help = The smallest step of the pen.
# Heading of a part of the sheet.
desk-part-pump = The pump
# Under that heading.
desk-part-pump-help = How it is worn and what it does by itself.
# Field.
field-tubing = Tubing
# What it is for, under the field.
field-tubing-help = Only a pump with tubing can deliver over a sink.
# A choice.
desk-tubed = With tubing
# A choice.
desk-tubeless = Worn on the skin, no tubing
# Field.
field-automation = Automation
# What it is for, under the field.
field-automation-help = What the pump changes without being asked.
# A choice.
desk-auto-none = Nothing
# A choice.
desk-auto-basal = Basal
# A choice.
desk-auto-both = Basal and corrections
# Field.
field-pump-step = Smallest step of the pump
# What it is for, under the field.
field-pump-step-help = For the record; no dose is rounded to it.
# Heading of a part of the sheet.
desk-part-daily = The daily total
# Under that heading.
desk-part-daily-help = Shares of the ketone table are shares of this.
# Field.
field-daily-total = Daily total
# What it is for, under the field.
field-daily-total-help = All insulin of a usual day, basal and meals.
# Heading of a part of the sheet.
desk-part-day = Settings by time of day
# Under that heading.
desk-part-day-help = Each begins at 00:00 and lasts until the next.
# Field.
field-factor = Correction factor
# What it is for, under the field.
field-factor-help = How far one unit lowers glucose.
# Field.
field-ratio = Carbohydrate ratio
# What it is for, under the field.
field-ratio-help = How many grams one unit covers.
# Field.
field-target = Target
# What it is for, under the field.
field-target-help = Where a correction is meant to end.
# Field.
field-basal = Basal
# What it is for, under the field.
field-basal-help = What the pump gives each hour.
# Heading of a part of the sheet.
desk-part-high = High glucose
# Under that heading.
desk-part-high-help = When a high is a high, and when to look again.
# Field.
field-trigger = Trigger
# What it is for, under the field.
field-trigger-help = From here on a high may be a failed delivery.
# Field.
field-middle = Middle
# What it is for, under the field.
field-middle-help = From here on ketones are treated with insulin alone.
# Field.
field-first-look = First look
# What it is for, under the field.
field-first-look-help = Minutes after a pump correction.
# Field.
field-second-look = Second look
# What it is for, under the field.
field-second-look-help = Minutes after a pump correction. Then it has worked or not.
# Field.
field-fall = Expected fall of glucose
# What it is for, under the field.
field-fall-help = What a working correction lowers by the second look.
# Field.
field-automation-minutes = High under automation
# What it is for, under the field.
field-automation-minutes-help = Minutes high, with automation on, that count as failed.
# Field.
field-looks = Looks after an injection
# What it is for, under the field.
field-looks-help = Minutes, each later than the one before.
# Heading of a part of the sheet.
desk-part-ketones = Ketones
# Under that heading.
desk-part-ketones-help = What is injected at which ketones and which glucose.
# Field.
field-ketone-test = Test at home
# What it is for, under the field.
field-ketone-test-help = Which meter or strip the person has.
# A choice.
desk-test-blood = Blood meter
# A choice.
desk-test-urine = Urine strips
# A choice.
desk-test-none = None
# Field.
field-act-from = Ketones act from
# What it is for, under the field.
field-act-from-help = It must be one of the edges of the table.
# Field.
field-ketone-fall = Expected fall of ketones
# What it is for, under the field.
field-ketone-fall-help = What a working dose lowers by the next look.
# Field.
field-combine = Extra and correction
# What it is for, under the field.
field-combine-help = Take the greater of both, or the extra alone.
# A choice.
desk-combine-greater = The greater of the two
# A choice.
desk-combine-replace = The extra alone
# Field.
field-table = The ketone table
# What it is for, under the field.
field-table-help = Edges, cells, repeats and calls. An empty cell is missing.
# Field.
field-hi = When the meter shows HI
# What it is for, under the field.
field-hi-help = There is no number, so no correction can be worked out.
# Field.
field-any-glucose = At any glucose
# What it is for, under the field.
field-any-glucose-help = Needed in pregnancy or with an SGLT2 inhibitor.
# Field.
field-carbs-below = Carbohydrate only below
# What it is for, under the field.
field-carbs-below-help = Below this, ketones get food and no insulin.
# Field.
field-carbs-grams = That carbohydrate
# What it is for, under the field.
field-carbs-grams-help = Eaten with ketones when glucose is not high.
# Heading of a part of the sheet.
desk-part-limits = Limits
# Under that heading.
desk-part-limits-help = No dose ever goes past one of these.
# Field.
field-single = Most in one dose
# What it is for, under the field.
field-single-help = Whatever the sum says.
# Field.
field-share = Most in one dose, by daily total
# What it is for, under the field.
field-share-help = A share: 0.2 is a fifth of the daily total.
# Field.
field-rolling = Most within the hours of action
# What it is for, under the field.
field-rolling-help = A share of the daily total, all doses together.
# Field.
field-lock = Hours between corrections
# What it is for, under the field.
field-lock-help = No correction by needle sooner than this.
# Field.
field-doses-call = Doses before a call
# What it is for, under the field.
field-doses-call-help = After so many, and still high: call, no number.
# Field.
field-ceiling = Count glucose up to
# What it is for, under the field.
field-ceiling-help = A higher reading counts as this one.
# Field.
field-rounding = Rounding
# What it is for, under the field.
field-rounding-help = To the mark of the syringe or the click of the pen.
# A choice.
desk-round-down = Down
# A choice.
desk-round-nearest = To the nearest
# Heading of a part of the sheet.
desk-part-squaring = Squaring
# Under that heading.
desk-part-squaring-help = How the pump learns of a dose by needle.
# Field.
field-ways = Ways this pump allows
# What it is for, under the field.
field-ways-help = Tick each that the person has practised.
# A choice.
desk-way-off-body = Delivered off-body, over a sink
# A choice.
desk-way-paused = Automation paused
# Field.
field-preferred = The usual way
# What it is for, under the field.
field-preferred-help = One of those ticked above.
# Field.
field-pause = Hours of pause
# What it is for, under the field.
field-pause-help = How long automation stays off after a dose.
# Heading of a part of the sheet.
desk-part-offpump = Off the pump
# Under that heading.
desk-part-offpump-help = When the pump is dead for longer.
# Field.
field-long-factor = Long-acting against basal
# What it is for, under the field.
field-long-factor-help = 1.0 is the basal of a whole day.
# Field.
field-parts = Injections a day
# What it is for, under the field.
field-parts-help = Of the long-acting insulin.
# Field.
field-cutover = Back on the pump after
# What it is for, under the field.
field-cutover-help = Hours after the last long-acting injection.
# Field.
field-bridge = Hours of one bridge dose
# What it is for, under the field.
field-bridge-help = Rapid-acting insulin until the long-acting works.
# Field.
field-reduced = Basal while both work
# What it is for, under the field.
field-reduced-help = A share of the usual basal. Leave empty for none.
# Heading of a part of the sheet.
desk-part-low = Low glucose
# Under that heading.
desk-part-low-help = What to do first when glucose is low.
# Field.
field-low-below = Low is
# What it is for, under the field.
field-low-below-help = At and under this: sugar, no insulin.
# Field.
field-very-low = Very low is
# What it is for, under the field.
field-very-low-help = At and under this: somebody stays with them.
# Field.
field-low-grams = Sugar
# What it is for, under the field.
field-low-grams-help = Taken at once.
# Field.
field-recheck = Test again after
# What it is for, under the field.
field-recheck-help = Minutes after the sugar.
# Field.
field-glucagon = Glucagon
# What it is for, under the field.
field-glucagon-help = Kind and dose, such as “nasal 3 mg”. Empty: none.
# Heading of a part of the sheet.
desk-part-contacts = Contacts
# Under that heading.
desk-part-contacts-help = At least one must answer at night.
# Field.
field-contacts = Contacts
# What it is for, under the field.
field-contacts-help = The team first. A school phones home as well.
# Heading of a part of the sheet.
desk-part-emergency = Emergency number
# Under that heading.
desk-part-emergency-help = The number of the place where the person lives.
# Field.
field-emergency = Emergency number
# What it is for, under the field.
field-emergency-help = As it is dialled there, such as 112.
# Heading of a part of the sheet.
desk-part-school = School
# Under that heading.
desk-part-school-help = Leave it empty where no school acts on this plan.
# Field.
field-prescriber = Orders signed by
# What it is for, under the field.
field-prescriber-help = Name of the prescriber.
# Field.
field-orders-expire = Orders expire
# What it is for, under the field.
field-orders-expire-help = Year, month, day.
# Field.
field-may-inject = Who may inject
# What it is for, under the field.
field-may-inject-help = One line each.
# Field.
field-calculation = How the dose is found
# What it is for, under the field.
field-calculation-help = The table, or also the sum.
# A choice.
desk-calc-table = Only the printed table
# A choice.
desk-calc-allowed = The sum is allowed
# Field.
field-call-first = Call before more than
# What it is for, under the field.
field-call-first-help = Units. The school phones before a larger dose.
# Field.
field-staff = Staff
# What it is for, under the field.
field-staff-help = One line each: name and task.
# Field.
field-storage = Where it is kept
# What it is for, under the field.
field-storage-help = Insulin, syringes, sugar, ketone strips.
# Field.
field-nurse-on = Reviewed by the nurse on
# What it is for, under the field.
field-nurse-on-help = Year, month, day.
# Heading of a part of the sheet.
desk-part-travel = Travel
# Under that heading.
desk-part-travel-help = Leave it empty where it does not matter.
# Field.
field-offset = Clock at home
# What it is for, under the field.
field-offset-help = Hours ahead of world time, such as +01:00.
# Field.
field-languages = Languages
# What it is for, under the field.
field-languages-help = Codes, one line each, such as en or pt-BR.
# Heading of a part of the sheet.
desk-part-notes = Notes
# Under that heading.
desk-part-notes-help = What the numbers cannot say.
# Field.
field-notes = Notes
# What it is for, under the field.
field-notes-help = At most 240 letters.
# A place in the plan.
place-column = Glucose edge
# A place in the plan.
place-columns = Glucose edges
# A place in the plan.
place-rows = Ketone rows
# A place in the plan.
place-row = Ketone row
# A place in the plan.
place-row-from = Ketone edge
# A place in the plan.
place-urine = Strip words
# A place in the plan.
place-repeat = Repeat after
# A place in the plan.
place-call = Call
# A place in the plan.
place-cells = Cells of a row
# A place in the plan.
place-contact-name = Contact, name
# A place in the plan.
place-contact-relation = Contact, who it is
# A place in the plan.
place-contact-phone = Contact, phone
# A place in the plan.
place-contact-when = Contact, when
# A place in the plan.
place-by = Agreed by
# A place in the plan.
place-role = Role
# A place in the plan.
place-on = Agreed on
# A place in the plan.
place-status = State
# A place in the plan.
place-house-rules = House rules
# A place in the plan.
place-retyped = Retyped, with reason
# A place in the plan.
place-revision = Revision

## The desk: rules of thumb beside the sheet

# Heading of the column, or of the fold on a phone.
yardsticks-title = Rules of thumb
# Below the heading.
yardsticks-help = They find slips of the pen. They set no number.
# While the plan cannot be read whole.
yardsticks-not-yet = They come when nothing is missing.
# $text: a number of the plan, with its unit.
yardstick-have = In the plan: { $text }
# One of several times of day. $place: the field and its time; $text: its number, with its unit.
yardstick-have-at = { $place }: { $text }
# $text: what the rule of thumb gives, with its unit.
yardstick-expected = By the rule: { $text }
# $from, $to: the numbers between which the review asks nothing; $to has the unit.
yardstick-ends = Not asked about: { $from } to { $to }
# $text: a number of grams for one unit.
yardstick-grams = { $text } g per unit
# $text: a share of the daily total.
yardstick-percent = { $text } %
# $text: units of the daily total for each kilogram.
yardstick-per-kg = { $text } units/kg
# Name of the rule that sets the daily total against the weight.
yardstick-title-per-kg = Daily total for the weight
# What the rule rests on.
yardstick-correction-factor = One number, shared by the daily total.
# What the rule rests on.
yardstick-carbohydrate-ratio = One number of grams, shared by the daily total.
# What the rule rests on.
yardstick-basal-share = Basal as a share of the daily total.
# What the rule rests on.
yardstick-daily-total-per-kg = Units of the daily total for each kilogram.
# What the rule rests on.
yardstick-daily-total = The daily total of most people.

## The desk: the story of an incident

# Heading: the last incident, told in order afterwards.
story-title = The last incident
# On that page, where the record holds none.
story-none = This record holds no incident.
# $day: a written day; $from: clock time.
story-when = It begins on { $day } at { $from }.
# $clock, $day: when it was closed.
story-closed = It was closed on { $day } at { $clock }.
# $clock, $day: the last thing that was written down.
story-open = It was not closed. The last entry is of { $day }, { $clock }.
# Heading above three lengths of time. $clock: when the first high glucose was read.
story-from-high = Time from the first high glucose, { $clock }
# The same, where no high glucose is written down. $clock: when the trouble was suspected.
story-from-suspicion = Time from the first suspicion, { $clock }
# Label of a length of time.
story-to-ketones = To the ketone test
# Label of a length of time.
story-to-needle = To the injection by needle
# Label of a length of time.
story-to-set = To the new infusion set
# $minutes: a number of minutes. Keep it short.
story-minutes = { $minutes } min
# $clock: when it was.
story-at = at { $clock }
# In place of a length of time: it is not written down, so perhaps it never happened.
story-never = Not written down
# Heading above the picture.
story-picture-title = The incident as a picture
# The picture in words. $from, $to: clock times; $readings, $tests, $needles: numbers.
story-picture = Picture from { $from } to { $to }. Glucose readings: { $readings }. Ketone tests: { $tests }. Injections: { $needles }.
# $value: glucose; $clock.
story-picture-highest = The highest glucose is { $value } at { $clock }.
# Below the picture: what the shapes mean.
story-picture-key = Dots are glucose. A triangle is a needle. A square is the pump. A cross is a change or a fault.
# Short label in the picture, before the level above which glucose is high.
story-high = high
# Short label in the picture, before the level at which glucose is low.
story-low = low
# Short label in the picture.
story-lane-ketones = ketones
# Short label in the picture.
story-lane-insulin = insulin
# Short label in the picture.
story-lane-changes = changes
# Heading above the table.
story-table-title = What happened, and what the plan led to
# Head of a column.
story-col-clock = Time
# Head of a column.
story-col-what = What happened
# Head of a column.
story-col-led = The plan led to
# $grams: a number.
story-led-grams = Carbohydrate: { $grams } grams
# Part of what the plan led to.
story-led-team = Call the team
# Part of what the plan led to.
story-led-emergency = Call for emergency help
# $rule: short name of a rule.
story-rule = Rule { $rule }
# $rule, $gate: short names of a rule and of what held the dose back.
story-rule-gate = Rule { $rule }, held by { $gate }
# A struck dose that goes on counting until the team agreed.
story-struck-counts = Struck, still counted
# Ketones that were not tested when a dose was given.
story-ketones-unknown = Ketones not tested
# $dose, $insulin: what went in by mistake.
story-mistake-dose = { $dose }, { $insulin }
# How much went in by mistake is not known.
story-mistake-unknown = The number of units is not known
# $dose: what was ordered on the telephone.
story-order-dose = Ordered: { $dose }
# $text: what the person typed, word for word.
story-typed = “{ $text }”
# A note without a text.
story-note-empty = A note without words
# $count: number of entries.
story-left-out = Later entries left out here: { $count }.
# $print: groups of digits; $engine: a version.
story-now = Worked out by the plan { $print }, version { $engine }.
# This page blames nobody.
story-no-judge = It tells what happened. It judges nobody.
# $days: written days of earlier incidents.
story-others = Earlier incidents in this record: { $days }.
# After that list, when it is not complete.
story-more-others = There are more before these.
# Button.
story-print = Print this page
# Below it.
story-print-sub = One sheet, black and white
# Button.
story-csv = Save as a table
# Below it.
story-csv-sub = A CSV file for a spreadsheet
# Button.
story-fhir = Save for the clinic
# Below it.
story-fhir-sub = A FHIR file of the whole record. It names the person and the day of birth.
# After a file was made.
story-file-made = The file is made. Look in your downloads.
# Instead of the story: the plan it would be told by is a draft that cannot be read yet.
story-plan-unfinished = The story needs a whole plan. Finish this draft first.
# Way back to the shelf of the desk.
story-back = Back to the plans
# Head of a column in the file.
csv-day = Day
# Head of a column in the file.
csv-clock = Time
# Head of a column in the file.
csv-minute = Minutes from the start
# Head of a column in the file.
csv-event = What happened
# Head of a column in the file.
csv-struck = Struck
# Head of a column in the file.
csv-led = The plan led to
# Head of a column in the file.
csv-dose = Dose
# Head of a column in the file.
csv-more = More
# Head of a column in the file.
csv-rule = Rule
# Head of a column in the file.
csv-at = Exact time
# Head of a column in the file.
csv-kind = Kind of entry
## The desk: handing a plan over

# Heading: plan goes to another device.
share-title = Hand this plan over
# Below it.
share-lede = On the other phone, open the app and bring a plan by code.
# Label: whose plan.
share-person = Person
# Name of the drawn code for screen readers.
share-code = The plan as a code
# Under the code. $count: characters; $version: size of the code.
share-size = Holds { $count } characters. Code size { $version }, at most 20.
# Where no signature found room.
share-unsigned = The plan is long, so this code is not signed. The file is.
# The plan needs too many characters. The texts to shorten follow.
share-too-long = This plan is too long for one code. Shorten one of these, or use the file.
# Opens the code as text.
share-text = The code as text
# Button.
share-copy = Copy the text
# Said afterwards.
share-copied = Copied.
# The browser does not let the page copy.
share-copy-yourself = The text is marked. Copy it yourself.
# Label of a text field.
share-from = Name of this device or clinic
# Below it.
share-from-sub = May stay empty. The other side reads it.
# Button.
share-file = Save it as a file
# Below it.
share-file-sub = For a mail, a stick, or keeping.
# Said afterwards.
share-saved = The file is saved.
# Button: the phone's own share sheet.
share-sheet = Share it
# Below it.
share-sheet-sub = With the ways this phone has.
# Sharing went wrong.
share-failed = It was not shared. Save it as a file instead.
# $key: groups of signs.
share-key = Signed by this device. Its key: { $key }
# The browser makes no key.
share-no-key = This browser cannot sign, so nothing was made.
# Caution.
share-private = Whoever gets this reads the whole plan. Hand it only to people you trust.
# No such plan here.
share-nothing = There is no plan here to hand over.

# Heading: a plan comes in.
bring-title = Bring a plan
# Below it.
bring-lede = Nothing is in use until you have seen it and agreed.
# Button.
bring-camera = Read a code with the camera
# Below it.
bring-camera-sub = The picture stays on this phone.
# Name of the camera picture for screen readers.
bring-camera-picture = What the camera sees
# Under the picture.
bring-camera-how = Hold the code so that it fills the picture. Keep still.
# Button.
bring-camera-stop = Switch the camera off
# The camera did not start.
bring-no-camera = The camera did not start. Take a photo of the code, or use a file.
# Button.
bring-photo = Take a photo of the code
# Below it.
bring-photo-sub = Or choose a picture of it.
# A picture of many megabytes.
bring-photo-large = This picture is too large. Possible: up to 40 MB.
# No picture at all.
bring-photo-unreadable = This is not a picture that can be read.
# No code found.
bring-photo-none = There is no readable code in it. Go closer, with more light.
# Label of a text field.
bring-paste = Or paste the text here
# Below it.
bring-paste-sub = The text of a code, or of a plan file.
# Button.
bring-paste-read = Read the text
# Nothing was pasted.
bring-paste-empty = There is no text yet. Paste it first.

# $day: a written day; $clock: time.
bring-when = { $day }, { $clock }
# $from: name of the device; $when: day and time; $key: groups of signs.
bring-signed = Unchanged since exported from { $from }, { $when }. Key { $key }
# $when: day and time; $key: groups of signs.
bring-signed-unnamed = Unchanged since exported, { $when }. Key { $key }
# What a signature does not say.
bring-signed-means = This does not say that the plan is right, or who agreed it.
# No signature.
bring-unsigned = Not signed. Nobody can say whether it was changed on its way.
# Label: check text of the plan.
bring-fingerprint = Fingerprint
# Loud. $name, $born: the person of the plan in use.
bring-other-person = Another person. The plan in use is for { $name }, born { $born }.
# Loud. $text: a text of the plan, with the number of each character that nobody sees, such as [U+200B].
bring-unseen = Characters that nobody sees stand in “{ $text }”. Compare it with the paper.
# Loud. $word: a word of the plan; $letters: those of its letters that are Greek or Cyrillic, each with its number.
bring-mixed = “{ $word }” mixes alphabets: { $letters }. Compare it with the paper.
# Loud.
bring-other-plan = Another plan of this person. It is no revision of the one in use.
# Loud. $revision: number in use.
bring-older = This is older. Revision { $revision } is in use.
# Loud.
bring-same-revision = Same revision as the one in use, but other numbers. Ask the clinic.
# Loud.
bring-draft = This is a draft. Nobody has agreed it.
# Loud.
bring-withdrawn = This plan is withdrawn. It gives no dose.
# Loud.
bring-superseded = A later revision took the place of this plan. It gives no dose.
# Loud.
bring-expired = This plan is past its time. It gives no dose.
# Loud.
bring-in-grace = This plan is due for review.
# Loud.
bring-in-incident = An incident is running. Changing the plan now changes the advice.
# Heading above the changed values.
bring-changes = What changes
# No value differs.
bring-changes-none = Nothing. It is the plan in use.
# Before the value in use.
bring-now = Now
# Before the new value.
bring-then = Then
# Instead of a value in use.
bring-new = New
# Instead of a new value.
bring-gone = No longer there
# Opens the values that stay. $count: how many lines.
bring-same-lines = What stays: { $count } lines
# Heading above all values.
bring-every = Every number of this plan
# Heading above the field for the day.
bring-accept = Take it into use
# Label of the field.
bring-day = Type the day it was agreed
# Below it.
bring-day-sub = It stands on your own paper. Year, month, day.
# While no day is typed.
bring-inactive = Not in use. Nothing has changed yet.
# The day fits.
bring-day-fits = The day fits.
# Another day.
bring-day-differs = This is not the day in the plan. Ask the clinic.
# In large type: the review of this app refuses the plan. Each finding follows, with its number.
bring-refused = This plan is not taken into use.
# Below it.
bring-refused-kept = It is kept here as it came, under “Plans not in use”.
# The same where the phone could not keep it.
bring-refused-not-kept = This phone could not keep it. Keep the file.
# Below it: what to do.
bring-refused-do = Call your clinic about what stands below.
# Above numbers that the review asks about and that the clinic did not confirm.
bring-unconfirmed = Your clinic did not confirm this: ask.
# After such a number: an earlier version of the app asked less exactly, and that was answered.
bring-earlier = It was confirmed in an earlier version.
# Button that leaves the refused plan.
bring-refused-leave = I will ask the clinic
# Heading: plans that came in and were refused.
aside-title = Plans not in use
# Below it.
aside-what = They came in and were not taken. They give no dose.
# Button: the plan as a file, as it came.
aside-save = Save this plan as a file
# Below it.
aside-save-sub = For the clinic. It is as it came.
# Button.
aside-remove = Remove it from here
# A draft cannot come into use.
bring-draft-not = A draft is not taken into use. It can be brought to the desk.

## The desk: paper, the card and the sheets

# Heading of the page that prints.
paper-title = Print
# Below it.
paper-lede = Paper works with no phone. A new print replaces earlier copies.
# Question.
paper-what = What to print
# Choice.
paper-card = Cards for the wallet
# Below it.
paper-card-sub = On a sheet, to cut and fold
# Choice.
paper-bare = Cards without a sheet
# Below it.
paper-bare-sub = Each side is a page of the card's own size
# Choice.
paper-fridge = The whole plan for the fridge
# Below it.
paper-fridge-sub = All tables in large print
# Choice.
paper-record = Record of an incident
# Below it.
paper-record-sub = Blanks to fill in by hand
# Choice.
paper-travel = Travel sheet
# Below it.
paper-travel-sub = Kit list, letter for security, time zones
# Choice.
paper-school = Sheet for the school
# Below it.
paper-school-sub = Orders, table, steps and a record
# Question.
paper-size = Paper
# Choice.
paper-a4 = A4, 210 by 297 mm
# Choice.
paper-letter = US Letter, 8.5 by 11 inches
# Question.
paper-languages = The stranger's side in other languages
# Below it.
paper-languages-sub = No clinician has checked these yet. Each side says so.
# Under it. $names: languages.
paper-languages-missing = This device lacks letters for: { $names }.
# Button.
paper-print = Print
# Below it.
paper-print-sub = Black on white, at 100 %, single-sided
# Above the picture of the pages.
paper-preview = How it will look
# Link.
paper-back = Back
# Instead of the pages.
paper-refused = This cannot be printed yet
# Reason. $state: draft, withdrawn and so on.
paper-refused-state = The plan is not in force: { $state }.
# Reason.
paper-refused-none = There is no plan on this device.
# Reason.
paper-refused-school = The plan holds no orders for a school.
# Reason. $day: the last day of the orders for the school.
paper-refused-orders = The orders for the school ended on { $day }.
# Reason. $path: the place in the plan.
paper-refused-path = The core refused the plan at { $path }.
# Reason: a mistake of ours. $what: what went wrong, for whoever mends it.
paper-refused-trouble = Something is wrong with the app: { $what }.
# Reason: the code has no room.
paper-refused-code = The plan is too long for one code. Shorten its longest texts.
# Reason. $part: which part; $side: which page.
paper-full = There is no room for { $part }.
# What to shorten. Follows the sentence above.
paper-full-table = Use fewer ketone rows, or print the plan for the fridge.
# What to shorten.
paper-full-names = Shorten the names, or leave out a contact.
# What to shorten.
paper-full-texts = Shorten the names of insulins and people.
# What to shorten.
paper-full-translation = Shorten the name of the team, or leave this language out.
# A part of the card.
part-table = the table of doses
# A part.
part-head = the head line
# A part.
part-steps = the steps
# A part.
part-calls = who to call
# A part.
part-contacts = the contacts
# A part.
part-front = the name and the dates
# A part.
part-code = the code
# A part.
part-stranger = the words for a stranger
# A part.
part-after = what comes after the needle
# A part.
part-off-pump = the long-acting insulin
# A part.
part-storage = the storage dates
# A part.
part-blanks = the lines to write on
# A part.
part-orders = the orders
# A part.
part-school = what the school fills in
# A part of the card: what is done without ketone strips.
part-no-strips = what to do without strips
# A part.
part-signatures = the signatures
# A part.
part-low = the treatment of a low
# A part.
part-danger = the danger signs
# A part.
part-kit = the kit list
# A part.
part-letter = the letter
# A part.
part-zones = the time zones
# A part.
part-record = the record

# On every sheet. $name: whose plan.
front-born = Born { $day }
# On every sheet.
front-revision = Plan revision { $revision }
# On every sheet.
front-agreed = Agreed { $day }
# On every sheet. $by, $role: who agreed it.
front-by = { $by }, { $role }
# On every sheet.
front-review = Review by { $day }
# On every sheet. $print: the first signs of the fingerprint.
front-print = Mark { $print }
# On every sheet.
front-engine = Stopgap { $engine }
# On a card.
front-card = Card { $number } of { $count }
# On a sheet.
front-page = Page { $number } of { $count }
# On every sheet.
front-replaces = Replaces earlier copies
# Before a line to sign on.
front-signed = Signed
# On a table side, at the foot. $name, $revision.
front-short = { $name }, revision { $revision }
# On every sheet: what this is not.
front-caution = It follows the agreed plan only. Your team and local rules come first.

# Above a table that is for some hours only.
card-hours = From { $from } to { $to } only.
# Head of the first column. $unit.
card-glucose = Glucose { $unit }
# Head of a column: ketones from this value. $ketones.
card-ketones = Ketones { $ketones } up
# Added where the whole column asks to call.
card-column-call = call
# Added where the whole column asks to go.
card-column-go = go
# Head of a column while nothing was tested.
card-untested = Not tested
# First column, low. $glucose.
card-row-low = to { $glucose }
# First column. $glucose: the lower edge of the row.
card-row-from = { $glucose } up
# First column: the meter says HI, twice.
card-row-hi = HI twice
# Head of a column, for who tests with strips: what the strip says. $strip: one word or several, as Small, Moderate.
card-strip = Strip: { $strip }
# Head of a column of doses, while ketones cannot be tested.
card-no-strips = No strips
# Heading: what is done while ketones cannot be tested.
card-no-strips-title = No ketone strips
# Head of a column of doses that hold for some hours only. $from, $to: clock times.
card-hours-column = { $from } to { $to }
# No ketone strips: what is done first.
card-no-strips-get = Get strips: a pharmacy, a neighbour or the hospital.
# No ketone strips, after a dose.
card-no-strips-change = After a dose: new set, new place.
# No ketone strips, after a dose, for a pump without tubing.
card-no-strips-change-tubeless = After a dose: new cannula, new place.
# No ketone strips. $minutes.
card-no-strips-look = Test glucose again after { $minutes } minutes.
# No ketone strips, and the person is ill.
card-no-strips-unwell = Unwell: call the team.
# Ketones too low to act, by the strip. $strip: one word or several, as Negative, Trace.
card-quiet-strip = Strip { $strip }:
# Ketones too low to act. $ketones: where they begin to act.
card-quiet = Ketones under { $ketones }:
# Under the table.
card-not-tested = Not tested: test both first. No dose before.
# Under the table, after it: another side of the cards has that heading.
card-no-strips-where = No strips: turn to “No ketone strips”.
# In a cell. $grams.
card-eat = eat { $grams } g
# In a cell. $grams.
card-sugar = sugar { $grams } g
# In a cell, after a dose. $grams.
card-and-grams = +{ $grams } g
# In a cell.
card-go = go
# In a cell, after a dose or grams.
card-and-go = , go
# In a cell.
card-call = call
# In a cell, after a dose or grams.
card-and-call = , call
# In a cell of the school's table, after a dose: call before it is injected.
card-and-call-first = , call first
# In a cell.
card-look-again = look again
# In a cell.
card-by-pump = by pump
# In a cell.
card-test = test ketones
# Above the table.
card-only-if = Only if no insulin by needle in the last { $hours } hours.
# After it.
card-not-sure = Not sure: call.
# Step. $insulin; $device: syringe or pen.
card-step-inject = { $device ->
    [syringe] Inject { $insulin } from a new vial.
   *[pen] Inject { $insulin } with a new pen.
  } Eat the grams too.
# Step.
card-step-change = New set, new place, new reservoir.
# Step, for a pump without tubing.
card-step-change-tubeless = New cannula, new place, new reservoir.
# Step: the pump runs the same amount out, with the tubing off the body. Where its end is comes before the pump gives.
card-step-off-body = Tubing off the body. Is the end over the sink? Pump the same there.
# Step, after the pump has run it out.
card-step-join = Join the tubing to the new set again. Look: no drops, no wet.
# Step. $hours.
card-step-automation = Automation off for { $hours } hours.
# After the needle. $minutes.
card-look = Test both again { $minutes } minutes after the needle.
# After the needle. $hours.
card-hold = No correction for { $hours } hours after the needle.
# After the needle.
card-no-second = Do not take a second dose from this table. Call.
# After the needle.
card-drink = Drink water.
# After the needle.
card-sglt2 = Stop the SGLT2 inhibitor.
# After the needle.
card-pump-counts = The app counts the pump's insulin too. Use it if you can.
# Whom to call. $ketones.
card-call-team-from = Ketones { $ketones } and up: call the team.
# Whom to call, for who tests with strips. $strip: the word of a strip.
card-call-team-strip = Strip { $strip } and up: call the team.
# Whom to call, for who tests with strips. $strip: the word of a strip. $number.
card-call-emergency-strip = Strip { $strip }: call { $number } and go.
# Whom to call. $ketones, $number.
card-call-emergency-from = Ketones { $ketones } and up: call { $number } and go.
# Whom to call. $number.
card-call-signs = Vomiting, drowsy, fast breathing: call { $number } and go.
# Whom to call.
card-call-hi = Meter says HI twice: call.
# $glucagon, $number.
card-glucagon = Low and cannot swallow: glucagon { $glucagon }, call { $number }.
# Off the pump. $hours, $dose, $insulin.
card-long-acting = Pump off { $hours } hours or longer: { $dose } of { $insulin }, once a day.
# Off the pump, in two parts.
card-long-acting-parts = Pump off { $hours } hours or longer: { $dose } of { $insulin }, twice a day.
# Off the pump. $insulin.
card-long-acting-not-for-high = Do not use { $insulin } for a high glucose.
# Off the pump. A pump that works again beside long-acting insulin gives basal a second time. $hours, $insulin.
card-off-pump-back = Pump works again: it waits { $hours } hours after { $insulin }.
# Off the pump, where the plan has no amount. $hours.
card-long-acting-ask = Pump off { $hours } hours or longer: call for long-acting insulin.
# Off the pump. $hours, $insulin.
card-off-pump-bridge = Until it works: { $insulin } by needle every { $hours } hours. Ask how much.
# Off the pump.
card-off-pump-call = Call the team when the pump stays off.
# Storage. $insulin, $days. A line to write on follows.
card-storage = { $insulin }: { $days } days once opened. Opened:
# On every card.
card-feel-worse = Feel worse than the numbers? Go. Call { $number }.
# Where the plan names nobody of the team. $number.
card-no-team = No team number here: call { $number }.
# A contact. $name, $phone.
card-contact = { $name } { $phone }
# Heading.
card-after-title = After the needle
# Heading.
card-calls-title = Who to call
# Heading.
card-off-pump-title = Pump stays off
# Heading.
card-storage-title = Insulin in use
# Under the code.
card-code = The plan. Scan it with the app.
# Name of the drawn code for screen readers.
card-code-label = The plan as a code
# Blank to write on.
blank-time = Time
# Blank.
blank-day = Day
# Blank.
blank-glucose = Glucose
# Blank.
blank-ketones = Ketones
# Blank.
blank-units = Units
# Blank.
blank-insulin = Insulin
# Blank: what else was done.
blank-done = Done, and why
# Blank.
blank-initials = Initials
# On a sheet of cards.
sheet-cut = Cut along the frame. Fold it backwards at the dashed line, then at the marks.
# Beside a line of 50 mm. $length.
sheet-check = This line is { $length } mm. Measure it. If not, print at 100 %.

# A stranger's side.
stranger-type = Type 1 diabetes.
# A stranger's side.
stranger-failed = My insulin pump may have failed.
# A stranger's side.
stranger-low = Awake, but shaky or confused? Give me sugar.
# A stranger's side. $number.
stranger-unwell-number = Vomiting, drowsy or fast breathing? Call { $number }.
# A stranger's side.
stranger-say = Say “ketoacidosis, pump failure”.
# A stranger's side.
stranger-no-inject = Do not inject me.
# A stranger's side. $name, $phone.
stranger-call = Call { $name }: { $phone }
# For a hospital.
stranger-basal = Hospital: never stop basal insulin.
# For a hospital.
stranger-normal = A normal glucose does not exclude ketoacidosis.
# For a hospital.
stranger-test = Test blood ketones.

# Heading of the plan for the fridge.
fridge-title = When the pump stops delivering
# Heading.
fridge-steps = In this order
# Heading of the sheet to write on.
record-title = Record of an incident
# On that sheet.
record-help = Write each reading, dose and change as it happens. Then show it to the team.
# Label before a line to write on.
record-began = Began on
# Label before a line to write on.
record-first = First high glucose at
# Label before a line to write on.
record-set-changed = New set at
# Label before a line to write on.
record-called = Called, and who answered
# Label before a line to write on.
record-automation-back = Automation on again at

# Heading.
travel-title = Before a journey
# Heading.
travel-kit = Twice the supplies, in hand luggage
# Head of a column.
travel-days = Days
# Head of a column. $insulin; $ml: what one holds.
travel-vials = { $insulin }, vials of { $ml } mL
# Head of a column. $insulin; $ml: what one holds.
travel-pens = { $insulin }, pens of { $ml } mL
# Head of a column.
travel-sets = Sets and reservoirs
# Under the table.
travel-or = Vials or pens, not both. Count syringes and strips twice as well.
# Under the table.
travel-also = Take glucagon, sugar, both meters, spare batteries, this plan and the card.
# Under the table. $least, $most.
travel-cool = Keep insulin between { $least } and { $most } °C.
# Under the table.
travel-hold = Do not put insulin in the hold of a plane.
# Heading.
travel-letter = To airport security
# Letter. $name, $day.
security-who = { $name }, born { $day }, has type 1 diabetes.
# Letter.
security-needs = They must carry insulin and supplies in the cabin at all times.
# Letter. $insulin.
security-rapid = Rapid-acting insulin: { $insulin }.
# Letter. $insulin.
security-long = Long-acting insulin: { $insulin }.
# Letter.
security-needles = They carry needles, syringes, a pump, sets, meters and batteries.
# Letter.
security-hand = Insulin must not freeze, so it must not go into the hold.
# Letter.
security-scan = Please ask the maker's advice before the pump is scanned. Offer a hand search.
# Letter.
security-fluid = They need drink and gel against low glucose, beyond the usual limit.
# Letter: label before a line to write on.
letter-flight = Flight and dates
# Letter: label.
letter-clinic = Clinic and stamp
# Heading.
travel-zones = Another time zone
# The published rule in words. $hours.
zones-under = Shift under { $hours } hours: change nothing.
# The published rule.
zones-home = Until you have arrived, every dose goes by the clock of home.
# The published rule.
zones-pump = The pump works: set its clock when you arrive.
# The published rule.
zones-week = Away for less than a week: the pump may keep the time of home.
# The published rule. $insulin, $hours.
zones-injected = A shift of { $hours } hours or more, on { $insulin }? Ask before you leave.
# The published rule.
zones-east = Going east the day is shorter. The team lowers that one dose.
# The published rule.
zones-west = Going west the day is longer. Half at home's hour, half at the new hour.
# Where the rule comes from.
zones-source = Source: { $source }

# Heading of the school's sheet.
school-title = Orders for school
# At its head and foot.
school-unsigned = Not valid unless signed.
# Above the table.
school-not-sure = Not sure: call { $name }, { $phone }.
# Heading.
school-low-title = Low glucose: first
# Low. $glucose, $grams.
school-low-sugar = { $glucose } or less, or shaky: { $grams } g of sugar now.
# Low. $minutes.
school-low-recheck = Test again after { $minutes } minutes. Still low: the same again.
# Low.
school-low-no-insulin = Do not inject insulin.
# Low. $number.
school-low-swallow = Cannot swallow, or fitting: nothing by mouth. Call { $number }.
# Low. $glucagon.
school-low-glucagon = Then glucagon: { $glucagon }, if you are trained for it.
# Low. $name, $phone.
school-low-call = Then call { $name }, { $phone }.
# Heading.
school-table-title = High glucose: the row of the table
# Heading.
school-steps-title = In this order
# Step. $name, $day.
school-step-who = This sheet is for { $name }, born { $day }. Ask for both.
# Step.
school-step-test = Test glucose from a washed finger. Test blood ketones.
# Step, for a child who is tested with strips.
school-step-test-strip = Test glucose from a washed finger. Test ketones with a strip.
# Step. $name, $phone.
school-step-home = Call { $name }, { $phone }. Which insulin was given today?
# Step. $hours.
school-step-home-needle = By needle today, or within { $hours } hours: no dose. Ask what to do.
# Step.
school-step-row = Find the row of the glucose and the column of the ketones.
# Step.
school-step-sum = Trained staff may use the app's sum instead of the row.
# Step. $dose, $name, $phone.
school-step-call-first = More than { $dose }: first call { $name }, { $phone }.
# Step. $who, $insulin.
school-step-inject = May inject { $insulin }: { $who }.
# Step.
school-step-write = Write time, readings and units on the record. Add your initials.
# Step. $name, $phone.
school-step-change = The set must be changed. Call { $name }, { $phone }.
# Step, pump without tubing. $name, $phone.
school-step-change-tubeless = Cannula and reservoir must be changed. Call { $name }, { $phone }.
# Step. $hours.
school-step-automation = Automation stays off for { $hours } hours.
# Step. $name, $phone.
school-step-no-second = No second dose today. Still high: call { $name }, { $phone }.
# Step. The team stands below the steps.
school-step-no-row = No row fits, or in doubt: call the team, named below.
# Step, where the orders name no team. $number.
school-step-no-row-number = No row fits, or in doubt: call { $number }.
# What staff do while ketones cannot be tested.
school-no-strips = High, and no strips: no dose. Call home, then the team.
# Heading over those of the team, each with its hours.
school-team-title = The team
# Heading.
school-danger-title = Danger: call at once
# Danger. $number.
school-danger-signs = Vomiting, drowsy, confused, fast breathing: call { $number }.
# Danger. $ketones, $number.
school-danger-ketones = Ketones { $ketones } and up: call { $number }.
# Danger, for a child who is tested with strips. $strip: the word of a strip. $number.
school-danger-strip = Strip { $strip }: call { $number }.
# Danger. $name, $phone.
school-danger-home = Then call { $name }, { $phone }.
# Heading.
school-orders-title = Orders of the prescriber
# Order. $name.
school-order-prescriber = Prescriber: { $name }
# Order. $day.
school-order-expire = Orders end on { $day }
# Order. $insulin, $count.
school-order-insulin = Insulin: { $insulin }, { $count } units in one mL
# Order.
school-order-table = Doses: from the table only. Do not calculate.
# Order.
school-order-sum = Doses: from the table, or the app's sum by trained staff.
# Order. $dose.
school-order-most = Never more than { $dose } at once
# Order. $who.
school-order-inject = May inject: { $who }
# Order. $dose.
school-order-call-first = Call first above { $dose }
# Heading.
school-fields-title = Filled in by the school
# Field. $who.
school-field-staff = Trained staff: { $who }
# Field. $place.
school-field-storage = Kept at: { $place }
# Field. $day.
school-field-reviewed = Nurse reviewed on { $day }
# Field.
school-field-ask = Ask your school nurse which tasks staff may do here.
# Signature.
sign-prescriber = Prescriber
# Signature.
sign-parent = Parent
# Signature.
sign-nurse = School nurse
# Signature.
sign-student = Student
# Beside a signature.
sign-date = Date
# Heading of the record page.
school-record-title = Record at school

## The school: choosing a student

# Heading of the first page of the school. No student is named on it.
school-choose = Which student?
# Above the name of the student who is still open. $name: the student.
school-open-now = Open now: { $name }
# Button back to the student who is open. $name: the student.
school-back-to = Back to { $name }
# Field for the student's name.
school-name = Name of the student
# Below the field for the name.
school-name-sub = First name and last name, as in the orders.
# Above the keys for the date of birth.
school-born-label = Date of birth
# Below the figures, while they are not complete.
school-born-help = Eight figures: year, month, day. 20160907 is 7 September 2016.
# The date of birth in words. $day: the day.
school-born = born { $day }
# No calendar has the typed figures as a day.
school-no-day = No calendar has that day. Type year, month, day.
# Field for the initials of whoever acts.
school-initials = Your initials
# Below the field for initials.
school-initials-sub = They stand beside everything you write down.
# Button: look whether this student is here.
school-find = Find the student
# The name is not typed yet.
school-need-name = Type the name.
# The date of birth is not whole.
school-need-born = Type the whole date of birth.
# There are no initials yet, or they are not letters.
school-need-initials = Type your initials. One to six letters.
# Nothing found. It must not say whether the name or the day was wrong.
school-none = No student here has this name and this date of birth.
# A dose of some student was shown and nobody said what became of it. No name here. $clock: when.
school-waits-dose = A dose was shown at { $clock }. Nobody said if it was given.
# A check of some student is late. No name here. $clock: when it was due.
school-waits-look = A look of { $clock } is late. Choose that student.
# Button: a student's orders come in.
school-take = Bring a student’s orders
# Below the button that brings orders.
school-take-sub = By file or code, with the signed paper at hand.
# Button to the other face of this device.
school-leave = Leave the school
# Below the button that leaves the school.
school-leave-sub = To the device’s own plan.
# Below everything on the first page.
school-alone = Each student’s plan and log lie apart, on this device only.
# Heading before another student is opened. $from: who is open now, $to: who was typed.
school-switch = Change from { $from } to { $to }?
# Label of the student who is open.
school-switch-from = Open now
# Label of the student who was typed.
school-switch-to = Change to
# What becomes of the first. $name: the student open now.
school-switch-kept = What you typed for { $name } stays.
# Button: the other student is opened. $name: that student.
school-switch-yes = Yes, change to { $name }
# Button: the other student is not opened. $name: the student open now.
school-switch-no = No, stay with { $name }

## The school: one student

# In the head of every page of a student. $initials: of whoever acts.
school-acting = Initials: { $initials }
# Button: nobody is open any more.
school-close = Close this student
# Below the button that closes the student.
school-close-sub = Nothing is lost. The name is typed again.
# Button: to the page where a student is typed.
school-another = Another student
# The one wide button, when something is open already.
school-go-on = Go on
# Below the wide button.
school-start-sub = High glucose, ketones, illness or pump failure.
# Label of the emergency number in a button that calls it.
school-emergency = the emergency number
# Label: who signed the orders.
school-prescriber = Prescriber
# Label: last day of the signed orders.
school-orders-end = Orders end on
# Label: last day of the school year.
school-year-end = School year ends on
# Label: the earlier of those two days.
school-copy-ends = This copy ends
# Label: who has seen the signed paper.
school-copy-seen = Signed copy
# $by: who saw the signed paper; $day: when.
school-copy-seen-value = Seen by { $by } on { $day }
# Label: where the school keeps the supplies.
school-supplies-at = Supplies
# Label: where the orders say the supplies are kept.
school-storage = Kept, by the orders
# Label: who may inject, by the orders.
school-may-inject = May inject
# Below the button for a new set, a dose or a mistake.
school-change-sub = New set, a dose, a mistake with a dose
# Button to the page that prints.
school-sheet = Print the sheet
# Below the button that prints.
school-sheet-sub = Orders, table, steps and a record on paper
# Button on the waiting page.
school-to-student = To the student’s page
# The copy is over with the orders. $day: their last day.
school-over-orders = These orders ended on { $day }. Call now.
# The copy is over with the school year. $day: its last day.
school-over-year = The school year ended on { $day }. Call now.
# The plan is withdrawn, replaced, or past its review.
school-over-plan = The plan of these orders may not be used any more. Call now.
# The clock of the device stands before the day the copy came. $day: that day.
school-over-clock = This device’s clock is wrong: these orders came on { $day }. Set it.
# Said where a student is chosen, after nobody touched the device for a while.
school-idle = Nobody touched this device. The student is closed. Nothing is lost.
# Below a step that changes the set, the reservoir or the insulin.
school-change-who = Only who is trained for it. Otherwise call home.
# Below it.
school-over-no-dose = Do not give a dose by this copy.
# Below it, the next sentence.
school-over-call = Ask home what to do, and for new orders.
# Button: the questions about danger signs and a low, which need no orders.
school-over-signs = Look for danger signs
# Below the button for danger signs.
school-over-signs-sub = And what to do when glucose is low.

## The school: on the way to a dose

# Under the step that confirms the child.
school-read-aloud = Read it aloud. The child or a second adult says yes.
# Button at that step.
not-this-child = This is another child
# Below the button for another child.
not-this-child-sub = It is written down. This student is closed.
# Goes into the log; an entry is never taken away.
school-note-other-child = The answers before this were about another child.
# After that, on the first page.
school-other-child-said = It is written down. Choose the right student.
# Under the step that calls home, before a dose.
school-ask-home = Ask: which insulin was given today, and when?
# Below it.
school-ask-home-night = Ask about last night too.
# Under the same step when the orders want this call before the dose.
school-call-first = Say: the orders want this call before the dose. Ask if you may.
# Under the same step when no dose follows.
school-ask-what = There is no dose from these orders now. Ask what to do.
# Nobody answered.
school-no-answer = No answer is written down. Try again, or another number.
# Button: nobody can be reached.
school-nobody = Nobody at home answers
# Below the button when nobody answers.
school-nobody-sub = Then there is no dose. Call the team.
# Question after home has answered.
given-home = What did home give today?
# Below that question.
given-home-help = Type each dose home tells you, by needle or by pump.
# Warning while nobody is open: the record of some student is damaged.
school-waits-doubt = The record of one student is damaged. Do not inject. Call home.
# Warning while nobody is open: the orders of some student are damaged.
school-broken = The orders of one student cannot be read. Take them in again.
# Why there is no second dose at a school.
school-no-second = Insulin by needle was given. These orders allow no second dose today.
# Heading before the call: no dose is promised yet.
school-before-dose = Before any dose
# Instead of saying that something falls.
school-not-to-judge = No dose from these orders now. Home says how to go on.
# The cell of the signed table the dose stands in. $glucose, $ketones: lower edges; $unit: of glucose.
school-cell = From the signed table: { $glucose } { $unit } and up, ketones { $ketones } and up.
# The same for a meter that says HI.
school-cell-hi = From the signed table: HI, ketones { $ketones } and up.
# Field on the last page before the needle.
school-injector = Initials of who injects
# Both answers stay in the log of a school.
answers-note-both = The old answer stays in the log, beside the new one.

## The school: the log, and removing

# Heading and button of the log.
school-log = Log
# Column of the log: whose initials.
school-log-initials = Initials
# Column: name of the student.
school-log-student = Student
# Column: date of birth.
school-log-born = Born
# An entry without initials.
school-log-nobody = none
# At the end of the log. $day and $clock: now.
school-log-printed = As of { $day }, { $clock }.
# Button: the log as a file.
school-log-csv = Save as a table
# Below the button for the table.
school-log-csv-sub = For a spreadsheet.
# Button: print the log.
school-log-print = Print this log
# Button on the student's page.
school-remove = Remove this student’s data
# Heading, the first time.
school-remove-ask = Remove this student’s data?
# Heading, the second time.
school-remove-again = Type the name a second time
# What goes.
school-remove-what = Orders, log and answers go, from this device only. Print the log first.
# Field for the name, typed to remove.
school-remove-name = Type the student’s name
# Button after the name was typed once.
school-remove-on = Go on
# Button after the name was typed twice.
school-remove-now = Remove it all now
# The typed name is another one.
school-remove-differs = That is not this student’s name. Nothing is removed.
# After it, on the first page. No name here.
school-removed = It is removed. All other students are still here.

## The school: signed orders come in

# What a file must hold. Stands after "Possible:".
school-orders-wanted = orders for a school
# $day: today, year first. Stands after "Possible:".
school-orders-from = { $day } or later
# Button: these are the right orders; the signed paper comes next.
school-take-on = Yes, these are the orders
# Heading of the page before a copy is active.
school-sign-title = Have you seen the signed copy?
# The student is here already. $revision: of the copy that is replaced.
school-replaces = This student is here. This copy takes the place of revision { $revision }.
# A file from home may hold a record.
school-no-record = The file holds a record of home. It is not taken in. Ask home.
# Field for who has seen the signed paper.
school-seen-by = Signed copy seen by
# Below the field for who has seen it.
school-seen-by-sub = Your name, or name and role.
# Field for the day it was seen.
school-seen-on = Seen on
# Below each field for a day.
school-day-sub = Year, month, day.
# Field for the last day of the school year.
school-year-ends = Last day of the school year
# Field for where the supplies are kept.
school-supplies = Where are the supplies?
# Below that field.
school-supplies-sub = Insulin, syringes, strips, sugar.
# Nobody is named as having seen it.
school-need-by = Type who has seen the signed copy.
# The day is missing, or lies ahead.
school-need-on = Type the day it was seen. It cannot be after today.
# The last day is missing, or is over.
school-need-year = Type the last day of the school year. It cannot be over.
# The place is missing.
school-need-supplies = Type where the supplies are.
# Button: from now on this copy is the one in use.
school-activate = I have seen it. Use this copy
# After it, on the first page. No name here.
school-active = The copy is active. Choose the student.

## Off the pump: bridge, long-acting insulin, and back

# Question, where the record does not know.
off-when = Since when is the pump off?
# Help.
off-when-help = Since no insulin came from it.
# Main button. $clock: as typed.
off-when-yes = Since { $clock }
# The same, where that time was yesterday.
off-when-yesterday = Since { $clock } yesterday
# Button: nothing is written down; somebody looks ahead.
off-when-runs = It still runs
# Question.
off-hours = How many hours without a pump?
# Help.
off-hours-help = Until a pump works again. Guess long.
# Unit after the number.
off-unit-hours = hours
# Main button. $hours: as typed.
off-hours-yes = About { $hours } hours
# Button: danger signs and ketones come first.
off-ill = Ill, or ketones? Start here
# Below it.
off-ill-sub = Danger signs, glucose, ketones
# Question.
off-sleep = Will you sleep in this time?
# Help.
off-sleep-help = Type when you will be awake again.
# Main button. $clock: as typed.
off-sleep-yes = I am awake again at { $clock }
# Button.
off-awake = I stay awake
# Question.
off-carbs = What do you eat now?
# Unit after the number: grams of carbohydrate.
off-unit-grams = g carbohydrate
# Main button. $grams: as typed.
off-carbs-yes = { $grams } g now
# Button.
off-no-food = Nothing now
# Why, after an injection for food.
off-eat-why = The insulin for it is in.
# The same, after “I am not sure” whether it was injected: it is treated as if it was.
off-eat-counts = Its insulin counts as given.
# Button below “It is eaten”.
off-not-eaten = I have not eaten it
# Question.
off-glucose = Glucose now
# Help.
off-glucose-help = From a finger.
# Main button. $value and $unit.
off-glucose-yes = Glucose is { $value } { $unit }
# Button.
off-not-measured = I have not measured
# Name of the kind of insulin, above its own name.
off-rapid = Rapid-acting insulin
# Name of the kind of insulin, above its own name.
off-long = Long-acting insulin
# Two injections are due, of two insulins: only the first is named here.
off-two = Two injections, one after the other. This is the first.
# Button to the page of the second one.
off-second = Then the second injection
# Below it.
off-second-sub = On a page of its own
# Button, while only one injection is due: to the times that concern the other insulin.
off-more = All times
# Below it.
off-more-sub = What to do and what not to do until when
# The pump is back within two hours: nothing is injected in its place.
off-way-soon = Back within two hours: no injection in its place.
# The same, while the last injection still stands for its hours.
off-way-soon-after = The last injection lasts for now. A pump is expected soon after.
# Beside a clock time: what to do if the pump is still off then.
off-alarm-if-off = Set an alarm. Pump still off? Come back here.
# Beside a clock time, after the pump came back.
off-back-look = Test glucose and ketones.
# $hours: number.
off-back-later = Then test every { $hours } hours today.
# What was said about how long. $clock: time; $day: another day, or nothing.
off-assumed-hours = You expect a pump at about { $clock }.
# The same, on another day. $day: written out.
off-assumed-day = You expect a pump on { $day }, about { $clock }.
# Nobody knew.
off-assumed-unknown = Nobody knows when a pump comes.
# $clock: time.
off-assumed-sleep = You wake at { $clock }.
# Button: the team said on the telephone how much long-acting insulin to inject.
off-order = The team named an amount
# Below it.
off-order-sub = Long-acting insulin, on the call now
# Question.
off-order-ask = How many units did they say?
# Help.
off-order-help = Of long-acting insulin. Only for an injection now.
# Main button. $dose: the amount as typed.
off-order-yes = They said { $dose }
# Heading: read to the team. $dose: amount with unit; $insulin: name.
off-order-sure = { $dose } of { $insulin }
# Below it.
off-order-say = Say it back to them. Wait for their yes.
# Main button.
off-order-right = They said yes
# Button.
off-order-other = Another amount
# Heading: what the team named is more than a day's dose, or is with what was injected. $dose: amount with unit.
off-order-large = { $dose } is too much to be injected
# Below it.
off-order-large-do = Call back. Say the number again, and ask for another.
# Note: an order that is too large is never shown as an injection.
off-note-order-large = The amount named is over a day’s dose. Call back and say it again.
# Note: an order that nobody said back is never shown as an injection.
off-note-order-read-back = The amount named was not said back. Call again and say it back.
# Note: no reading is to be had, and hours went by without basal insulin.
off-note-no-reading = Without a reading: basal only, no correction. Call your team.
# Note: too much rapid insulin may be working, so none is injected here.
off-note-ask-basal = Ask on the call how basal insulin comes now.
# Note: glucose is near low. $grams: carbohydrate.
off-note-eat-first = Eat { $grams } grams first. Then test again, before any injection.
# Note: glucose is near low. $grams: carbohydrate.
off-note-eat-with = Eat { $grams } grams together with this injection.
# Note: nobody knows how much went in by mistake. No name of an insulin here.
off-note-unknown = Nobody knows how much went in. No basal before your team answers.
# Note: less basal insulin went in than the plan says. No name of an insulin here.
off-note-too-little = Less went in than the plan says. Call your team.
# Note: long-acting insulin is due in the hours somebody said they will sleep.
off-note-long-asleep = Long-acting insulin is due while you sleep. Ask somebody to wake you.
# Note: hours of basal are less than one mark of the syringe, a day's is not.
off-note-long-small = A few hours of basal are less than one mark. Call before this dose.
# Note: of a journey west two halves are injected.
off-note-second-half = This is the second half for the journey.
# Button: a few hours of basal are less than one mark, so one mark is given for what is owed.
off-step-open = Inject one mark of basal
# Below it.
off-step-sub = For the basal that is owed so far
# Before long-acting insulin: when a pump may run as usual. $day, $clock.
off-long-pump = After this dose a pump runs as usual from { $day }, { $clock }.
# The same: sooner. $percent: share of the usual basal that the plan wrote.
off-long-pump-reduced = Sooner: only with { $percent } % of its basal.
# The same: sooner, where the plan wrote no share.
off-long-pump-ask = Sooner: only after asking your team.
# Before long-acting insulin that stands in for a basal too small to be drawn.
off-long-call = Call your team before this dose.
# What to do with a pump that works again, while injected basal insulin works.
off-back-ask = Ask your team before you start the pump.
# The same. $percent: share of the usual basal that the plan wrote.
off-back-now-reduced = Run the pump at { $percent } % of your basal until its time below.
# The same: an injection for some hours is in.
off-back-after = Start the pump when the hours of the last injection end.
# Food until then.
off-back-food-needle = Inject for food by needle until then.
# On the page of the dose. $name: who; $clock: time of the call.
off-ordered = Ordered by { $name } at { $clock }.
# Line of the working.
off-work-ordered = Ordered on the call
# Two injections in place of the pump for the same hours, perhaps by two people.
off-note-twice = The same hours were injected for twice. Eat if glucose falls. Call your team.
# A journey, where the plan gives long-acting insulin in two parts a day.
off-travel-parts = Your plan has two parts a day. Your team names the amounts.
# Above an injection and on its page.
off-vial-over = The insulin in use is out of date. Open a new one.
# An injection is due in the hours somebody said they will sleep, and no insulin that lasts the night is here.
off-note-asleep = An injection is due while you sleep. Ask somebody to wake you.
# Another amount than the plan's, of an insulin that is not named here, went in.
off-note-other = Another amount than the plan’s went in. Call your team.
# Before a dose of long-acting insulin, where a journey across time zones was typed.
off-note-travel-ask = On the day of a journey, call your team before this dose.
# Heading.
off-title = The pump is off
# Heading: the record says that the pump runs.
off-title-on = The pump is on
# Heading, where somebody looks ahead and the pump still runs.
off-title-ahead = If the pump stops now
# $clock: since when.
off-since = Off since { $clock }.
# The same, since another day than today. $day: which day; $clock: since when.
off-since-day = Off since { $day }, { $clock }.
# Heading: danger signs, glucose and ketones are asked before anything is injected for the pump.
off-first-title = Answer the questions first
# Below the heading of what comes first.
off-first = This comes first. Injections for the pump wait.
# Line.
off-correction-first = The correction waits for your answers.
# Line.
off-low = Glucose could go low. Test more often.
# Main button.
off-questions = Answer the questions
# Why this way.
off-way-on = Nothing to inject in place of the pump.
# Beside it, while injected basal insulin works: that time stands in the list below.
off-way-on-waits = Do not run the pump as usual before its time below.
# Why this way.
off-way-shorter = For these hours: rapid-acting insulin.
# Why this way.
off-way-longer = For so long: long-acting insulin.
# Why this way.
off-way-unknown = Nobody knows how long: long-acting insulin.
# Why this way.
off-way-asleep = You will be asleep: long-acting insulin.
# Why this way.
off-way-no-long-here = No long-acting insulin is here. Inject every few hours.
# The plan itself names no long-acting insulin.
off-way-no-long = Your plan has no long-acting insulin. Inject every few hours.
# Why this way: a few hours of basal cannot be drawn, a day's can.
off-way-under-step = A few hours of basal are less than one mark: long-acting insulin.
# Why this way.
off-way-at-work = Long-acting insulin is in.
# Button: the dose of rapid insulin that stands in for the pump.
off-bridge-open = Inject for the next hours
# Below it. $from and $to: clock times.
off-bridge-sub = Rapid-acting, for { $from } to { $to }
# Button, where no basal is due: an injection for food.
off-meal-open = Inject for what you eat
# Button, where no basal is due: an injection because glucose is high.
off-correct-open = Inject a correction
# Button.
off-long-open = Long-acting insulin
# Below it.
off-long-sub = Read the label first
# In the timetable: an alarm.
off-alarm-bridge = Set an alarm: next injection.
# In the timetable: an alarm.
off-alarm-long = Set an alarm: the next long-acting injection.
# In the timetable: an alarm.
off-alarm-part = Set an alarm: next part of the long-acting.
# In the timetable.
off-long-until = Until then, do not inject long-acting again.
# In the timetable.
off-look = Test glucose and ketones.
# In the timetable.
off-call-then = Call your team if the pump is still off.
# $percent: share of the usual basal that the plan wrote.
off-back-reduced = Back sooner only with { $percent } % of your basal.
# Note.
off-note-get-long = Get long-acting insulin: pharmacy, hospital, your team.
# The same, where the plan has no long-acting insulin, and so no amount of it.
off-note-ask-long = Ask your team for long-acting insulin, and how much.
# Note.
off-note-missed = An injection was missed. Never inject double.
# Note.
off-note-missed-long = Too long without insulin. Test ketones now.
# Note.
off-note-long-held = Do not inject long-acting again yet.
# Note.
off-note-split = More than one injection is needed.
# Note: nothing of it can be drawn, and it is not made up later.
off-note-hours-under = What these hours need is less than one step. Call your team.
# Note: the same of the dose for a day.
off-note-long-under = The long-acting dose is less than one step. Call your team.
# Note.
off-note-cut = The dose was cut to the plan’s limit.
# Note.
off-note-a-day = More than a day off the pump is long.
# Note.
off-note-call-day = After 24 hours, call your team.
# Note.
off-note-call-clinic = After 48 hours, call again. Nobody answers: go to a clinic.
# Note.
off-note-pen = Do not draw insulin out of a pen.
# Note.
off-note-vial = Do not use the vial that filled the pump.
# Note.
off-note-box = The dates on your box count, not these.
# Note.
off-note-heat-frost = Do not use insulin that was hot or frozen.
# Note.
off-note-talk = Tell your clinic about the missed basal.
# Note.
off-note-automation-until = Keep automation off until its time in the list.
# Note.
off-note-travel-ignore = Under three hours of zones: change nothing.
# Note.
off-note-travel-same = Keep the basal amount. Move the clock times.
# Note.
off-note-travel-east = Going east, the day is shorter: a smaller dose.
# Note.
off-note-travel-west = Going west, the day is longer: two parts.
# Note.
off-note-travel-clock = Holds and looks go on by hours, not by the clock.
# Note.
off-note-supplies = Pack twice what you need.
# Line.
off-frozen = Insulin that was ever frozen is thrown away.
# Line.
off-expiry = Look at the date printed on the box.
# Label.
off-vial = Insulin in use
# Label.
off-reservoir = Reservoir
# Label.
off-set = Infusion set
# Value. $day: a day, or a time of the clock.
off-keeps-until = Until { $day }
# Value.
off-keeps-last = Last day today
# Value.
off-keeps-due = Change it now
# Value.
off-keeps-over = Out of date: do not use
# Button.
off-back-now = A pump works again
# Below it.
off-back-now-sub = Written down with this time
# Button.
off-off-now = The pump is off now
# Below it.
off-off-now-sub = Written down with this time
# Button.
off-again = Ask again
# Below it.
off-again-sub = Hours, sleep, food, glucose
# Button.
off-zones-open = I travel across time zones
# Below it.
off-zones-open-sub = For injected basal insulin
# Question.
off-zones = How many hours does the clock change?
# Help.
off-zones-help = Hours between home and there.
# Unit after the number.
off-unit-zones = hours
# Button. $zones: as typed.
off-zones-east = { $zones } hours east
# Button. $zones: as typed.
off-zones-west = { $zones } hours west
# Button.
off-zones-none = I do not travel
# Button, where the zones are known: what they do to the long-acting insulin.
off-travel-open = My journey across time zones
# Below the heading. The amounts that follow are for one day.
off-travel-day = On the day of the journey only.
# Beside the first amount.
off-travel-home = At your usual hour, by the clock at home.
# Beside the second amount.
off-travel-there = At your usual hour, by the clock there.
# Frame below the amounts: this app shows no second long-acting dose while the first one's hold runs, but the one that is named on a call.
off-travel-ask = Call your team before each one. Then type the amount they name.
# Below the amounts.
off-travel-rule = By a published rule for injected long-acting insulin.
# Beside an amount. $clock: by this phone; $day: such as 25 November 2026.
off-travel-due = { $clock } by this phone, { $day }
# Line.
off-travel-team = Agree it with your team before you go.
# Button.
off-zones-other = Change the hours
# Question.
off-which = Which insulin is in your hand?
# Help.
off-which-help = Read the label. Then choose.
# Button.
off-which-other = Another one, or I cannot read it
# Why a look for the next injection is struck; stands in the record.
off-strike-reason = Long-acting insulin works by then.
# In the record: why a planned test was taken away. A later dose moved it.
off-moved-reason = More long-acting insulin went in.
# Button: there is no long-acting insulin here.
off-which-none = I have none here
# Below it: injections every few hours go on.
off-which-none-sub = Injections every few hours until then
# Button, later.
off-have-long = I have long-acting insulin now
# Below it.
off-have-long-sub = Its dose is worked out again
# Heading.
off-wrong = Do not inject this
# $insulin: name of the long-acting insulin.
off-wrong-do = You need { $insulin }.
# Heading. $insulin.
off-right = { $insulin } is in your hand
# Line.
off-long-once = Given once, it works all day. Nobody can take it back.
# The same, for a plan with two parts a day.
off-long-part = Given once, it works for hours. Nobody can take it back.
# Main button.
off-right-show = Show the dose
# Button: the long-acting insulin in the hand is in a pen, not in a vial.
off-right-pen = It is a pen
# Below it.
off-right-pen-sub = Show what to dial
# In the working. $from and $to: clock times.
off-work-basal = Basal { $from } to { $to }
# In the working.
off-work-carried = Left over from the last one
# In the working.
off-work-meal = For food
# In the working.
off-work-net = Correction
# In the working.
off-work-day = Basal of a day
# In the working.
off-work-factor = Times
# In the working.
off-work-a-day = A day
# Line of the working, for a plan with two parts a day: the share that is due now.
off-work-part = This part
# Line over a list of amounts.
off-injections = One after the other, each in a new place:
# $clock: when a correction is possible again.
off-waits-until = No correction in it until { $clock }.
# Line.
off-waits = No correction in it.

## The picture: insulin at work, and what it takes off

# Heading.
picture-title = Insulin at work
# Why the pump must be told.
picture-why = A pump that is not told may give the same dose again.
# Where no dose by needle acts any more.
picture-none = No dose by needle is working now.
# Above the drawing of falling lines. $unit: the unit of glucose.
picture-taking = Glucose it takes off, in { $unit }
# Below each drawing, under the figures 0, 1, 2.
picture-hours = Hours from now
# Beside a whole line.
picture-told = The pump is told, or stays off
# Beside a broken line. $dose: such as 4 units.
picture-untold = The pump is not told and gives { $dose } again
# In the drawing, at a thick line: below it glucose is low.
picture-low = Low from here
# Where only the broken line comes to the thick one.
picture-crosses = The same dose again leads to a low.
# $hours, then $told and $untold: how far glucose falls; $unit: its unit.
picture-falls = After { $hours } h: { $told } { $unit } lower. Not told: { $untold } lower.
# Below the drawing.
picture-alone = This is insulin alone. Food and missing basal are not drawn.
# Above the drawing of what still works.
picture-acting = Rapid-acting insulin still working
# $hours: from now; $units: such as 1.88 units.
picture-hour = After { $hours } h: { $units }
# $units: such as 4 units.
picture-now = Now: { $units }

## Waking up for a look

# Heading, and button on the page between the looks.
wake-title = Help to wake up
# Below the button.
wake-sub = A watch at the bedside, or your calendar
# Always said where an alarm is spoken of.
cannot-wake = This page cannot wake you.
# $clock: when the next look is due.
wake-alarm = Set this phone’s own alarm for { $clock }.
# Button: the page stays open, dimmed, and sounds at the look.
wake-watch = Watch at the bedside
# Below it.
wake-watch-sub = The screen stays on, dim, and sounds at the look.
# Button: saves a file for the phone's calendar.
wake-calendar = Put the looks into my calendar
# Below it.
wake-calendar-sub = Your calendar can ring when this page is closed.
# What the calendar says at each look. No name, no dose: others may see the screen. At most 60 characters.
calendar-words = Look again: open Stopgap
# After the file was saved.
calendar-said = The file is saved. Open it to add the looks.
# Heading before the watch starts.
watch-try = First, hear the alarm
# Line.
watch-mute = Turn the volume up. Turn mute off.
# Main button.
watch-play = Play the alarm
# Heading after it played.
watch-heard = Did you hear it?
# Main button.
watch-yes = I heard it
# Button.
watch-no = I heard nothing
# Line after "I heard nothing".
watch-unheard = Turn the volume up and mute off. Try again.
# Heading over the time now. $clock: when the next look is due.
watch-until = The next look is at { $clock }
# Line: the phone keeps the screen on.
watch-kept = The screen stays on. Keep the charger in.
# Line: the phone no longer keeps the screen on.
watch-lost = The screen may go dark. Then nothing will sound.
# Main button after that.
watch-again = Keep the screen on
# Button.
watch-stop = Stop the watch
# Heading while the alarm sounds; also in the notification.
watch-now = Look now
# Main button while the alarm sounds.
watch-awake = I am awake: test now

## The record

# Button on the page of the record: the last incident on one page.
story-entry = The last incident on one page
# Below it.
story-entry-sub = To look at with your team, to print or to save

# In the record.
record-opened = The incident began
# In the record.
record-closed = The incident was closed
# $value, $unit, $source: finger or sensor.
record-glucose = Glucose { $value } { $unit }, { $source }
# $value.
record-ketones = Ketones { $value } mmol/L
# $word: the strip's word.
record-urine = Urine strip: { $word }
# $dose.
record-shown = Shown: { $dose }
# In the record.
record-refused = The shown dose was not injected
# $dose, $insulin: rapid-acting or long-acting.
record-injection = Injected: { $dose }, { $insulin }
# $dose, $insulin.
record-injection-unsure = Perhaps injected: { $dose }, { $insulin }
# $dose.
record-pump-correction = Pump correction: { $dose }
# $dose.
record-pump-meal = Pump, for food: { $dose }
# $dose.
record-pump-automatic = Pump by itself: { $dose }
# $dose.
record-off-body-sink = Pump, over a sink: { $dose }
# $dose.
record-off-body-body = Pump, at the body: { $dose }
# $dose.
record-off-body-unsure = Pump, not sure where: { $dose }
# $grams.
record-carbs = Carbohydrate: { $grams } grams
# $clock.
record-look = Next look planned for { $clock }
# $to: who.
record-call = Called { $to }
# $to: who.
record-call-unanswered = Called { $to }, no answer
# Who was called.
call-to-team = the team
# Who was called.
call-to-emergency = the emergency number
# Who was called.
call-to-home = home
# $by: who ordered.
record-order = A dose was ordered by { $by }
# $clock.
record-alarm = Alarm set for { $clock }
# In the record. $by: who gave the order; it was said back to them.
record-order-read-back = A dose was ordered by { $by }, and said back
# In the record, after an injection. $hours: the hours its basal part is for.
record-basal-hours = Basal for { $hours } h
# In the record, after an injection: of a journey east. $zones: number of time zones.
record-zones-east = journey, { $zones } zones east
# In the record, after an injection: of a journey west. $zones: number of time zones.
record-zones-west = journey, { $zones } zones west
# In the record, after an injection: it stands for one that was written down wrong.
record-instead = in place of an entry that was wrong
# In the record. $day: the last day.
record-expires-vial = Insulin vial: use by { $day }
# In the record. $day: the last day.
record-expires-strips = Strips: use by { $day }
# In the record. $day: the last day.
record-expires-glucagon = Glucagon: use by { $day }
# In the record. $text: what it is; $day: the last day.
record-expires-other = { $text }: use by { $day }
# What it is, where nobody wrote it down.
record-expires-something = Supplies
# In the record: the button was pressed by mistake, within a minute.
record-mis-tap = A tap was taken back: nothing was injected
# In the record.
record-strike = An entry was struck
# Beside a struck entry.
record-struck = Struck
