// From the home page to what the core says.
export const asked = async (hand, { hours, wakes, grams, glucose, unit = 'mmol/L' } = {}) => {
  await hand.tap('The pump stays off');
  await hand.heading('How many hours without a pump?');
  if (hours) { await hand.keys(hours); await hand.tap(`About ${hours} hours`); } else await hand.tap('I do not know');
  await hand.heading('Will you sleep in this time?');
  if (wakes) { await hand.keys(wakes); await hand.tap(`I am awake again at ${wakes.slice(0, 2)}:${wakes.slice(2)}`); } else await hand.tap('I stay awake');
  await hand.heading('What do you eat now?');
  if (grams) { await hand.keys(grams); await hand.tap(`${grams} g now`); } else await hand.tap('Nothing now');
  await hand.heading('Glucose now');
  if (glucose) { await hand.keys(glucose); await hand.tap(`Glucose is ${glucose} ${unit}`); } else await hand.tap('I have not measured');
};
