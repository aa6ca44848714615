// Whom a call to the team rings at this hour.
const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const grammar = /^(?:(Sun|Mon|Tue|Wed|Thu|Fri|Sat)(?:-(Sun|Mon|Tue|Wed|Thu|Fri|Sat))? )?([01]\d|2[0-3]):([0-5]\d)-([01]\d|2[0-3]):([0-5]\d)$/;

const minutesOf = (hours, minutes) => Number.parseInt(hours, 10) * 60 + Number.parseInt(minutes, 10);

// true, false, or null where the words cannot be read.
export const openAt = (when, local) => {
  if (when === 'any hour') return true;
  const match = grammar.exec(when);
  if (!match) return null;
  const [, first, last, fromHours, fromMinutes, toHours, toMinutes] = match;
  const from = minutesOf(fromHours, fromMinutes), to = minutesOf(toHours, toMinutes);
  const minute = Math.floor(local / 60) % 1440, weekday = new Date(local * 1000).getUTCDay();
  // A window over midnight belongs to the day on which it begins.
  const onDay = day => {
    if (!first) return true;
    const start = weekdays.indexOf(first), end = last ? weekdays.indexOf(last) : start;
    return (day - start + 7) % 7 <= (end - start + 7) % 7;
  };
  if (from < to) return onDay(weekday) && minute >= from && minute < to;
  return (onDay(weekday) && minute >= from) || (onDay((weekday + 6) % 7) && minute < to);
};

export const teamToRing = (plan, local) => {
  const team = plan.contacts.filter(({ relation }) => relation === 'team');
  const rung = team.find(({ when }) => openAt(when, local) === null) ?? team.find(({ when }) => openAt(when, local));
  return rung ? { name: rung.name, phone: rung.phone } : { name: '', phone: plan.emergencyNumber };
};
