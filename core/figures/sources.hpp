// Where figures come from. A figure, a published test value and a row of the hazard log name one of these ids.
#pragma once
#include <string_view>

namespace stopgap::sources {

struct Source {
  std::string_view id;
  std::string_view body_title_year;
  std::string_view address;
};

inline constexpr Source loinc{"loinc", "LOINC part LG7967-5, molar mass of glucose 180.156 g/mol", "https://loinc.org/LG7967-5"};
inline constexpr Source loinc_codes{"loinc-codes", "LOINC, single codes as catalogue pages give them", "https://loinc.org"};
inline constexpr Source ucum{"ucum", "UCUM, table of common codes", "https://ucum.org"};
inline constexpr Source hypo_2023{"hypo-2023", "Glucose levels 1 to 3 of 2023, as reported",
                                  "https://bestpractice.bmj.com/topics/en-us/3000305/criteria"};
inline constexpr Source rch_line{"rch-line", "Royal Children's Hospital Melbourne, Insulin pump line failure, October 2024",
                                 "https://rch.org.au/diabetes/diabetes-help/Insulin_pump_line_failure"};
inline constexpr Source rch_ketones{"rch-ketones", "Royal Children's Hospital Melbourne, Ketones and diabetic ketoacidosis, n.d.",
                                    "https://rch.org.au/diabetes/type-1-diabetes-toolkit/Ketones_and_diabetic_ketoacidosis"};
inline constexpr Source au_pump{"au-pump", "Australian adult pump plan, first page, n.d.", "https://docslib.org/doc/4904651"};
inline constexpr Source aace_2022{"aace-2022", "AACE guideline 2022, Table 19, insulin profiles",
                                  "https://pmc.ncbi.nlm.nih.gov/articles/PMC10200071/table/T22"};
inline constexpr Source clamp_2005{"clamp-2005", "Lispro 6, 12 and 18 units under clamp, Diabetes Care 2005",
                                   "http://care.diabetesjournals.org/highwire/markup/29400"};
inline constexpr Source iso_8537{"iso-8537", "ISO 8537:2007, Table 1, sterile single-use insulin syringes",
                                 "http://m.mydoc123.com/p-775612.html"};
inline constexpr Source tayside{"tayside", "NHS Tayside, Sick day rules, n.d.",
                                "https://www.nhstayside.scot.nhs.uk/OurServicesA-Z/DiabetesOutThereDOTTayside/PROD_263760/index.htm"};
inline constexpr Source ratio_rules{"ratio-rules", "Rules of thumb for factors and ratios, teaching sheet, n.d.",
                                    "https://studylib.net/doc/7493397"};
inline constexpr Source uva{"uva", "University of Virginia Health, children's sick days, n.d.", "https://uvahealth.com"};
inline constexpr Source know{"know", "NHS North West London, Worked examples: sick day guidance for type 1 diabetes, 17 December 2024",
                             "https://knowdiabetes.org.uk/resources/internal/worked-examples-sick-day-guidance-for-type-1-diabetes"};
inline constexpr Source rch_high{"rch-high", "Royal Children's Hospital Melbourne, Pump therapy: hyperglycaemia management, n.d.",
                                 "https://rch.org.au/diabetes/Diabetes-technology/Pump_therapy__Hyperglycaemia_management"};
inline constexpr Source hamilton{"hamilton", "Hamilton Health Sciences, pump off, PD 7609 and PD 7620, 2014", "https://docslib.org/doc/6820932"};
inline constexpr Source fi_backup{"fi-backup", "Finland, university hospitals' Health Village, Backup system for pump therapy, 4 November 2023",
                                  "https://www.terveyskyla.fi/en/diabeteshub"};
inline constexpr Source zones_2013{"zones-2013", "Travel across time zones, J Diabetes Metab Disord 2013;12:59, as reported",
                                   "https://pmc.ncbi.nlm.nih.gov/articles/PMC7962589"};
inline constexpr Source iso_7810{"iso-7810", "ISO/IEC 7810, identification cards, physical characteristics, ID-1, as reported",
                                 "https://www.iso.org/standard/70483.html"};
inline constexpr Source lispro_label{"lispro-label", "US FDA label change, lispro in pumps, May 2011", "https://www.fda.gov"};
inline constexpr Source wtd{"wtd", "Illness and the pump, a family charity's page, Alberta, n.d.",
                            "https://www.waltzingthedragon.ca/diabetes/illness/adjusting-insulin-during-illness-insulin-pump/"};
inline constexpr Source chw_1878{"chw-1878", "Children's Wisconsin, sheet 1878, Back on the pump, n.d.", "https://childrenswi.org"};
inline constexpr Source sbd_2023{"sbd-2023", "Sociedade Brasileira de Diabetes, Sick days, 17 Aug 2023, opening",
                                 "https://diretriz.diabetes.org.br/manejo-dos-dias-de-doenca-no-dm1/"};
inline constexpr Source iso_18004{"iso-18004", "ISO/IEC 18004, QR Code bar code symbology specification, data capacities",
                                  "https://www.iso.org/standard/83389.html"};

}  // namespace stopgap::sources
