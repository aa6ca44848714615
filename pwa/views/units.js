// An amount of insulin in words, where the core has not written it: what somebody typed, or a line of the record.
export const unitsText = (number, words) => (number === '1' ? words('dose-one') : words('dose-text', { number }));
// The word beside an amount that stands in figures of its own.
export const unitWord = (number, words) => (number === '1' ? words('unit-unit') : words('unit-units'));
