// The text both sides of a printed code know: the keys and words of a plan in their canonical order, so that a code carries little
// but the person's own values. Never change a letter of it: codes printed before could not be read any more. A new text is a new
// version of the code's prefix.
#pragma once
#include <string_view>

namespace stopgap::json {

inline constexpr std::string_view known_plan =
    R"(,"travel":{"homeOffset":"+00:00","languages":["en","fr","de","es","it"]},"superseded","withdrawn","draft","replace","nearest","lispro","degludec",)"
    R"("detemir","glulisine",{"path":"/plan/limits/singleDose","reason":"},{"path":"/plan/high/trigger","reason":"},{"path":"/plan/dailyTotal","reason":")"
    R"({"addUnits":1},{"fallback":{"shareOfDaily":0.1},"timesCorrection":1.5},"anyGlucose":{"shareOfDaily":0.05},"notes":"},"reducedBasalShare":0.5},)"
    R"("relation":"school nurse","when":"school days","name":"Emergency department","when":"nights"}],)"
    R"("dailyTotal":20,"carbohydrateRatio":[{"from":"00:00","value":20},{"from":"06:30","value":15.5},{"from":"17:00","value":8}],"correctionFactor":[{"from":"00:00","value":50},)"
    R"({"from":"20:00","value":45}],"target":[{"from":"00:00","value":120},{"from":"07:00","value":100},{"from":"21:00","value":110}]},)"
    R"("glucoseUnit":"mg/dL","high":{"automationMinutes":90,"expectedFall":36,"firstLook":60,"looksAfterInjection":[60,120],"middle":180,"secondLook":120,"trigger":250},)"
    R"("ketones":{"actFrom":0.6,"carbohydrateGrams":15,"carbohydrateOnlyBelow":100,"columns":[0,180,250],"combine":"greater","expectedFall":0.2,"hi":{"perKg":0.1},)"
    R"("rows":[{"call":"none","cells":["none","none","none"],"from":0,"urine":["negative","trace"]},{"call":"none","cells":["none",{"perKg":0.05},{"perKg":0.1}],"from":0.6,)"
    R"("repeatHours":2,"urine":["small"]},{"call":"team","cells":[{"perKg":0.05},{"perKg":0.1},{"perKg":0.1}],"from":1.5,"repeatHours":2,"urine":["moderate"]},)"
    R"({"call":"emergency","cells":[{"perKg":0.05},{"perKg":0.1},{"perKg":0.15}],"from":3,"repeatHours":2,"urine":["large"]}],"test":"urine"},)"
    R"("dosingCeiling":400,"low":{"below":70,"glucagon":"injection","grams":10,"recheckMinutes":15,"veryLow":54},"notes":"},)"
    R"("pump":{"automation":"basal","step":0.05,"tubing":"tubeless"},"school":{"calculation":"tableOnly","allowed","callFirstAbove":2,"mayInject":["School nurse","],)"
    R"("nurseReviewedOn":"2026-,"ordersExpire":"2027-,"prescriber":"Dr ,"staff":[", school nurse"],"storage":"Office fridge"},"squaring":{"pauseHours":4,"preferred":"paused","ways":["paused"]},)"
    R"("syringe":{"capacity":30,"step":0.5},"role":"diabetes nurse","status":"draft"},)"
    R"({"agreement":{"by":"Dr ","graceDays":30,"houseRules":["rollingShare","matchedCarbohydrate","extraNotReduced"],"on":"2026-","retyped":[],)"
    R"("reviewBy":"2027-","role":"diabetes consultant","status":"agreed"},"contacts":[{"name":"Diabetes team","phone":"+44 ","relation":"team","when":"any hour"},)"
    R"({"name":"Mother","phone":"+","relation":"home","when":"any hour"}],"dailyTotal":40,"day":{"basal":[{"from":"00:00","value":0.8},{"from":"06:00","value":0.95},)"
    R"({"from":"22:00","value":0.7}],"carbohydrateRatio":[{"from":"00:00","value":10},{"from":"11:00","value":12}],"correctionFactor":[{"from":"00:00","value":2.5},)"
    R"({"from":"07:00","value":2}],"target":[{"from":"00:00","value":6.5},{"from":"22:00","value":7}]},"decimalMark":".","emergencyNumber":"112","format":"stopgap.plan",)"
    R"("glucoseUnit":"mmol/L","high":{"automationMinutes":90,"expectedFall":2,"firstLook":60,"looksAfterInjection":[60,120],"middle":10,"secondLook":120,"trigger":14},"id":"p-)"
    R"(","ketones":{"actFrom":0.6,"carbohydrateGrams":20,"carbohydrateOnlyBelow":5.6,"columns":[0,10,14],"combine":"greater","expectedFall":0.2,"hi":{"shareOfDaily":0.1},)"
    R"("rows":[{"call":"none","cells":["none","none","none"],"from":0,"urine":["negative","trace"]},{"call":"none","cells":["none",{"shareOfDaily":0.05},{"shareOfDaily":0.1}],)"
    R"("from":0.6,"repeatHours":2,"urine":["small"]},{"call":"team","cells":[{"shareOfDaily":0.05},{"shareOfDaily":0.1},{"shareOfDaily":0.1}],"from":1.5,"repeatHours":2,"urine":["moderate"]},)"
    R"({"call":"emergency","cells":[{"shareOfDaily":0.05},{"shareOfDaily":0.1},{"shareOfDaily":0.2}],"from":3,"repeatHours":2,"urine":["large"]}],"test":"blood"},)"
    R"("limits":{"dosesBeforeCall":2,"dosingCeiling":20,"lockHours":4,"rollingShare":0.3,"shareOfDaily":0.2,"singleDose":10},)"
    R"("longActing":{"actionHours":24,"inUseDays":28,"name":"glargine","onsetHours":2,"unitsPerMl":100},"low":{"below":3.9,"glucagon":"nasal","grams":15,"recheckMinutes":15,"veryLow":3},"notes":"","offPump":{"bridgeHours":4,"cutoverHours":12,"longActingFactor":1,"parts":1},"pen":{"capacity":60,"step":1},)"
    R"("person":{"born":"19","measuredOn":"2026-","name":"","pregnant":false,"sglt2Inhibitor":false,"weightKg":7},"pump":{"automation":"basalAndCorrections","step":0.05,"tubing":"tubed"},)"
    R"("rapid":{"actionHours":4.5,"inUseDays":28,"name":"aspart","unitsPerMl":100},"revision":1,"rounding":"down","squaring":{"pauseHours":4,"preferred":"offBody","ways":["offBody","paused"]},)"
    R"("syringe":{"capacity":50,"step":1},"title":"","travel":{"homeOffset":"+","languages":["en"]},"version":1})";

}  // namespace stopgap::json
