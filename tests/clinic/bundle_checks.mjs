// What published validators of FHIR R4 let pass: a bad status, a date that is no day, a unit in the wrong case, a reference
// to nothing, a code nobody allowed. Each check gives what it found wrong, as text; an empty list is a good bundle.
import ucumLibrary from '@lhncbc/ucum-lhc';

const ucum = ucumLibrary.UcumLhcUtils.getInstance();

// FHIR R4 4.0.1: observation-status, medication-admin-status, request-status, care-plan-intent.
const statuses = {
  Observation: ['registered', 'preliminary', 'final', 'amended', 'corrected', 'cancelled', 'entered-in-error', 'unknown'],
  MedicationAdministration: ['in-progress', 'not-done', 'on-hold', 'completed', 'entered-in-error', 'stopped', 'unknown'],
  CarePlan: ['draft', 'active', 'on-hold', 'revoked', 'completed', 'entered-in-error', 'unknown'],
};
const intents = ['proposal', 'plan', 'order', 'option'];
const needed = {
  Patient: ['name', 'birthDate'], CarePlan: ['status', 'intent', 'subject', 'title'], Observation: ['status', 'code', 'subject', 'effectiveDateTime'],
  MedicationAdministration: ['status', 'medicationCodeableConcept', 'subject', 'effectiveDateTime'],
};
// Whom each reference may name.
const targets = { subject: 'Patient', reasonReference: 'Observation' };
const loinc = { '41653-7': 'mg/dL', '14743-9': 'mmol/L', '99504-3': 'mg/dL', '105272-9': 'mmol/L', '66441-7': 'mmol/L', '50557-8': null };
const units = { Observation: ['mg/dL', 'mmol/L'], MedicationAdministration: ['[iU]'] };
const interpretations = ['<', '>', 'H', 'L'];

const dayOf = text => new Date(`${text}T00:00:00Z`);
const isDay = text => /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(dayOf(text).getTime()) && dayOf(text).toISOString().startsWith(text);
const isMoment = text => /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(Z|[+-](0\d|1[0-4]):[0-5]\d)$/.test(text) && isDay(text.slice(0, 10));

const everywhere = (value, visit, path = '') => {
  visit(value, path);
  if (Array.isArray(value)) value.forEach((item, at) => everywhere(item, visit, `${path}/${at}`));
  else if (value && typeof value === 'object') Object.entries(value).forEach(([key, item]) => everywhere(item, visit, `${path}/${key}`));
};

const resourceFaults = (resource, known) => {
  const faults = [], { resourceType: type } = resource;
  const fault = text => faults.push(`${type}/${resource.id}: ${text}`);
  if (!needed[type]) return [`${type}: not a resource of this export`];
  for (const key of needed[type]) if (!Object.hasOwn(resource, key)) fault(`no ${key}`);
  if (!/^[A-Za-z0-9\-.]{1,64}$/.test(resource.id ?? '')) fault('id');
  if (statuses[type] && !statuses[type].includes(resource.status)) fault(`status ${resource.status}`);
  if (type === 'CarePlan' && !intents.includes(resource.intent)) fault(`intent ${resource.intent}`);
  if (resource.effectiveDateTime !== undefined && !isMoment(resource.effectiveDateTime)) fault(`time ${resource.effectiveDateTime}`);
  if (resource.birthDate !== undefined && !isDay(resource.birthDate)) fault(`day ${resource.birthDate}`);
  if (resource.period && !(isDay(resource.period.start) && isDay(resource.period.end) && resource.period.start <= resource.period.end)) fault('period');
  // The words of the record alone: no narrative, nothing hidden in an extension, no time of the export.
  for (const key of ['text', 'extension', 'modifierExtension', 'contained', 'meta', 'implicitRules']) if (Object.hasOwn(resource, key)) fault(`has ${key}`);

  const values = Object.keys(resource).filter(key => key.startsWith('value'));
  if (type === 'Observation') {
    const { coding } = resource.code ?? {};
    const code = coding?.[0]?.code;
    if (values.length !== 1 || resource.dataAbsentReason) fault(`${values.length} values`);
    if (coding?.length !== 1 || coding[0].system !== 'http://loinc.org' || !Object.hasOwn(loinc, code)) fault(`code ${code}`);
    else if (resource.valueQuantity && resource.valueQuantity.code !== loinc[code]) fault(`${code} in ${resource.valueQuantity.code}`);
    if (resource.valueCodeableConcept && !resource.valueCodeableConcept.text) fault('a value without words');
    for (const { coding: [one] } of resource.interpretation ?? [])
      if (one.system !== 'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation' || !interpretations.includes(one.code)) fault(`interpretation ${one.code}`);
  }
  everywhere(resource, (value, path) => {
    if (value === '' || value === null || (value && typeof value === 'object' && !Object.keys(value).length)) fault(`nothing at ${path}`);
    if (typeof value === 'string' && value !== value.trim()) fault(`blanks around ${path}`);
    if (value?.reference !== undefined) {
      const wanted = targets[path.split('/')[1]];
      if (known.get(value.reference) !== wanted) fault(`${path} leads to ${known.get(value.reference) ?? 'nothing'}`);
    }
    if (value?.system === 'http://unitsofmeasure.org') {
      if (!units[type]?.includes(value.code) || ucum.validateUnitString(value.code).status !== 'valid') fault(`unit ${value.code} at ${path}`);
      if (!Number.isFinite(value.value) || value.value < 0) fault(`value at ${path}`);
    } else if (value && typeof value === 'object' && Object.hasOwn(value, 'value') && Object.hasOwn(value, 'unit')) fault(`a quantity without UCUM at ${path}`);
  });
  return faults;
};

export const bundleFaults = bundle => {
  const faults = [];
  if (bundle.resourceType !== 'Bundle' || bundle.type !== 'collection') faults.push('no collection');
  for (const key of Object.keys(bundle)) if (!['resourceType', 'type', 'entry'].includes(key)) faults.push(`the bundle has ${key}`);
  const known = new Map(bundle.entry.map(({ fullUrl, resource }) => [fullUrl, resource.resourceType]));
  if (known.size !== bundle.entry.length) faults.push('one address twice');
  const ids = bundle.entry.map(({ resource }) => `${resource.resourceType}/${resource.id}`);
  if (new Set(ids).size !== ids.length) faults.push('one id twice');
  for (const { fullUrl } of bundle.entry)
    if (!/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(fullUrl)) faults.push(`address ${fullUrl}`);
  for (const kind of ['Patient', 'CarePlan']) if (ids.filter(id => id.startsWith(`${kind}/`)).length !== 1) faults.push(`not one ${kind}`);
  return [...faults, ...bundle.entry.flatMap(({ resource }) => resourceFaults(resource, known))];
};

export const converter = ucum;
