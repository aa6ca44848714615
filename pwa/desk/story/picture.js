// The night as one picture in black and white: glucose as dots at their height, and below it what was tested, given and changed.
// Shapes tell things apart, not colours. Places come as the core's minutes and heights; places on paper are all that is worked
// out here, in hundredths of the width, so that the letters keep their size on a phone and on a sheet of paper.
import { nothing, svg } from '../../vendor/lit-html.js';

const top = 30, high = 100, bottom = top + high;   // the strip of glucose
const lanes = { ketones: bottom + 34, insulin: bottom + 62, changes: bottom + 90 };
const foot = lanes.changes + 34;
const left = 21, width = 75;   // the labels stand on the left

const places = picture => row => (picture.minutes ? left + row.minute / picture.minutes * width : left + width / 2);
const percent = place => `${Math.round(place * 100) / 100}%`;
// Beside each other two numbers need some room; the table below has every one of them.
const spaced = (rows, place, room) => {
  let last = -room;
  return rows.filter(row => { const at = place(row); if (at - last < room) return false; last = at; return true; });
};
// What ran over a sink went into nobody.
const isByPump = row => ['pumpDose', 'mistake'].includes(row.kind) || (row.kind === 'offBody' && row.what.tubingEnd !== 'sink');
const isNeedle = row => row.kind === 'injection';
const isChange = row => ['changed', 'seen', 'pump', 'automation'].includes(row.kind);

const level = (text, height, name) => svg`<line class="level" x1="0" x2="100%" y1=${bottom - height} y2=${bottom - height}></line>
  <text class="level-t" x="0" y=${bottom - height - 4}>${name} ${text}</text>`;
const needle = (x, y) => svg`<svg x=${x} y=${y} overflow="visible"><path class="fill" d="M0 8L-7 -6H7z"></path></svg>`;
const byPump = (x, y) => svg`<svg x=${x} y=${y} overflow="visible"><path class="line" d="M-6 -6H6V6H-6z"></path></svg>`;
const change = (x, y) => svg`<svg x=${x} y=${y} overflow="visible"><path class="line" d="M-6 -6L6 6M6 -6L-6 6"></path></svg>`;

export const picture = (story, words, label) => {
  const place = places(story.picture);
  const counted = story.rows.filter(row => !row.struck || row.counts);
  const read = counted.filter(row => row.kind === 'glucose');
  const tested = counted.filter(row => row.kind === 'ketones');
  const dot = row => svg`<circle class=${row.what.reading ? 'line' : 'fill'} cx=${percent(place(row))} cy=${bottom - row.height} r="5"></circle>`;
  const join = (row, next) => svg`<line class="line" x1=${percent(place(row))} y1=${bottom - row.height} x2=${percent(place(next))} y2=${bottom - next.height}></line>`;
  const lane = (name, y) => svg`<line class="thin" x1="0" x2="100%" y1=${y + 11} y2=${y + 11}></line><text class="lane" x="0" y=${y + 5}>${name}</text>`;
  const marks = (rows, shape, y) => rows.map(row => shape(percent(place(row)), y));
  return svg`<svg class="night-picture" width="100%" height=${foot} role="img" aria-label=${label}>
    ${level(story.picture.trigger.text, story.picture.trigger.height, words('story-high'))}${level(story.picture.low.text, story.picture.low.height, words('story-low'))}
    <line class="line" x1="0" x2="100%" y1=${bottom} y2=${bottom}></line>
    ${read.slice(1).map((row, at) => join(read[at], row))}${read.map(dot)}
    ${spaced(read, place, 11).map(row => svg`<text x=${percent(place(row))} y=${bottom - row.height - 10} text-anchor="middle">${row.what.reading ?? row.what.value}</text>`)}
    ${lane(words('story-lane-ketones'), lanes.ketones)}${spaced(tested, place, 9).map(row => svg`<text x=${percent(place(row))} y=${lanes.ketones + 6} text-anchor="middle">${row.what.blood ?? '+'}</text>`)}
    ${lane(words('story-lane-insulin'), lanes.insulin)}${marks(counted.filter(isByPump), byPump, lanes.insulin)}${marks(counted.filter(isNeedle), needle, lanes.insulin)}
    ${lane(words('story-lane-changes'), lanes.changes)}${marks(counted.filter(isChange), change, lanes.changes)}
    <text x=${percent(story.picture.minutes ? left : left + width / 2)} y=${foot - 4} text-anchor="middle">${story.from.clock}</text>${story.picture.minutes ? svg`<text x=${percent(left + width)} y=${foot - 4} text-anchor="middle">${story.to.clock}</text>` : nothing}</svg>`;
};
