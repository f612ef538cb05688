import { send, why } from '/assets/live.js';
import { item, number } from '/assets/words.js';
import { drawOiledLane, make, oilSigns, sign } from '/assets/oil.js';
import { aimedAt, angleOf, arrowsFeet, ballAndLane, move, onChange, plan, release, reset, say, setLine, straightAt, train, trustWords } from '/assets/plan.js';

const svg = document.getElementById('plan-lane');
let map = null, path = null, line = null, seen = null, busy = false, again = false, mapFor = null, typed = false;

/** The board of the path at a distance; null beyond its end. */
function boardAt(feet) {
  const points = path?.path ?? [];
  const at = points.findIndex(point => point.feet >= feet);
  if (at < 0 || feet < points[0].feet) return null;
  if (at === 0) return points[0].board;
  const [a, b] = [points[at - 1], points[at]];
  return a.board + (b.board - a.board) * (feet - a.feet) / (b.feet - a.feet);
}

// On a phone the lane stays in view while the sliders move, so its key must not take the room.
if (matchMedia('(max-width: 45.99rem)').matches) document.getElementById('key').open = false;

const whole = digits => value => number(value, digits);
const [one, two] = [whole(1), whole(2)];
const angleWords = degrees => degrees === null ? '?' : `${two(Math.abs(degrees))}° ${degrees >= 0 ? 'in' : 'out'}`;

/** The line's farther target: where the downlane one is, or nearer where the straight line has left the boards before. */
function lineFeet() {
  let feet = plan.downlaneFeet;
  while (feet > 20 && (straightAt(feet) < 0.5 || straightAt(feet) > 39.5)) feet = Math.max(20, feet - 1);
  return feet;
}

/** Asks for map, path and line of the plan as it is now; the newest wish wins. */
async function renew() {
  document.documentElement.dataset.planned = 'working';
  if (busy) { again = true; return; }
  busy = true;
  try {
    const { lane, fit } = ballAndLane(), wanted = JSON.stringify([lane, fit]);
    if (wanted !== mapFor) {
      const answer = await send('POST', '/api/plan/lane', { ...(lane ? { lane } : {}), ...(fit ? { fit } : {}) });
      if (answer.ok) { map = answer.body; mapFor = wanted; }
      say('lane', answer.ok ? '' : why(answer));
    }
    const pattern = map?.patternFeet >= 32 && map.patternFeet <= 52 ? { patternFeet: map.patternFeet } : {};
    const [thrown, straight] = await Promise.all([
      send('POST', '/api/plan/path', { release: release(), ...ballAndLane() }),
      send('POST', '/api/plan/line', { hand: plan.hand, laydownBoard: Math.min(39.5, Math.max(0.5, straightAt(0))), launchAngleDeg: plan.launchAngleDeg,
        downlaneFeet: lineFeet(), slideDistanceBoards: plan.slideDistanceBoards, walk: 'breakpoint', ...pattern }),
    ]);
    say('path', thrown.ok ? '' : why(thrown));
    say('line', straight.ok ? '' : why(straight));
    if (thrown.ok) path = thrown.body;
    if (straight.ok) line = straight.body;
    draw();
    tell();
    document.documentElement.dataset.planned = again ? 'working' : thrown.ok && straight.ok ? 'yes' : 'no';
  } finally {
    busy = false;
    if (again) { again = false; renew(); }
  }
}

const halo = (node, width) => { const under = node.cloneNode(); under.setAttribute('stroke', 'var(--ground)'); under.setAttribute('stroke-width', String(width));
  under.removeAttribute('stroke-dasharray'); return [under, node]; };
const stroke = { fill: 'none', 'stroke-linecap': 'round', 'stroke-linejoin': 'round' };
const phases = {
  skid: { stroke: 'var(--hit)', 'stroke-width': 3.5 },
  hook: { stroke: 'var(--miss)', 'stroke-width': 3.5, 'stroke-dasharray': '8 6' },
  roll: { stroke: 'var(--text)', 'stroke-width': 3.5, 'stroke-dasharray': '0.5 7' },
};
const diamond = (x, y, size = 7) => make('path', { d: `M${x} ${y - size}l${size} ${size}l${-size} ${size}l${-size} ${-size}z`, fill: 'var(--miss)',
  stroke: 'var(--ground)', 'stroke-width': 2 });
const square = (x, y) => make('rect', { x: x - 5, y: y - 5, width: 10, height: 10, fill: 'var(--text)', stroke: 'var(--ground)', 'stroke-width': 2 });
const ring = (x, y) => make('circle', { cx: x, cy: y, r: 6, fill: 'var(--target-fill)', stroke: 'var(--ground)', 'stroke-width': 2 });
const cross = (x, y, size = 3.2) => make('path', { d: `M${x - size} ${y - size}l${2 * size} ${2 * size}m0 ${-2 * size}l${-2 * size} ${2 * size}`,
  stroke: 'var(--unknown)', 'stroke-width': 2, fill: 'none' });
const stop = (x, y) => make('path', { d: `M${x - 9} ${y}h18M${x} ${y - 5}v10`, stroke: 'var(--text)', 'stroke-width': 3, fill: 'none' });
const triangle = (x, y) => make('path', { d: `M${x} ${y - 6}l6 10h-12z`, fill: 'var(--target-fill)', stroke: 'var(--ground)', 'stroke-width': 1.5 });

function draw() {
  if (!map || !path) return;
  const { across, down, shorter } = drawOiledLane(svg, map, plan.hand);
  const breakpoint = path.breakpointFeet ?? Math.min(path.rollFeet ?? path.endFeet, path.endFeet), roll = Math.min(path.rollFeet ?? path.endFeet, path.endFeet);
  const first = path.path[0].feet, straightEnd = [...Array(61).keys()].filter(feet => feet >= first && straightAt(feet) >= 0.5 && straightAt(feet) <= 39.5).at(-1) ?? first;
  svg.append(make('line', { x1: across(straightAt(first)), y1: down(first), x2: across(straightAt(straightEnd)), y2: down(straightEnd), stroke: 'var(--text)',
    'stroke-width': 1, 'stroke-dasharray': '2 4' }));
  const piece = (from, to, look) => {
    if (!(to > from)) return;
    const feet = [from, ...path.path.map(point => point.feet).filter(each => each > from && each < to), to];
    svg.append(...halo(make('polyline', { points: feet.map(each => `${across(boardAt(each)).toFixed(2)},${down(each).toFixed(2)}`).join(' '), ...stroke, ...look }), 6));
  };
  piece(first, breakpoint, phases.skid);
  piece(breakpoint, roll, phases.hook);
  piece(roll, path.endFeet, phases.roll);
  if (seen) for (const shot of seen.shots) for (const place of shot.places) svg.append(cross(across(place.board), down(place.feet)));
  if (line?.exit) {
    const x = across(line.exit.board), y = down(line.exit.feet);
    svg.append(make('path', { d: `M${x} ${y - 9}v18M${x - 6} ${y - 9}h12M${x - 6} ${y + 9}h12`, stroke: 'var(--text)', 'stroke-width': 2, fill: 'none' }));
  }
  if (path.arrowsBoard !== null) svg.append(triangle(across(path.arrowsBoard), down(arrowsFeet)));
  if (path.breakpointFeet !== null) svg.append(diamond(across(path.breakpointBoard), down(path.breakpointFeet)));
  if (path.rollFeet !== null && path.rollFeet < path.endFeet) svg.append(square(across(boardAt(path.rollFeet)), down(path.rollFeet)));
  const end = path.path.at(-1);
  svg.append(path.contact ? ring(across(path.contact.board), down(path.contact.feet)) : stop(across(end.board), Math.max(6, down(end.feet))));
  svg.setAttribute('aria-label', `The ball is laid down on board ${one(plan.laydownBoard)}, crosses board ${one(path.arrowsBoard)} at the arrows, ${path.breakpointFeet === null ? 'has no breakpoint' : `breaks on board ${one(path.breakpointBoard)} at ${one(path.breakpointFeet)} feet`}, and ${path.end === 'gutter' ? `ends in the gutter at ${one(path.endFeet)} feet` : `reaches 60 feet on board ${one(path.boardAt60)}`}.`);

  const long = look => halo(make('path', { d: 'M2 9H32', ...stroke, ...look }), 6);
  document.getElementById('legend').replaceChildren(
    sign(long(phases.skid), 'skids'), sign(long(phases.hook), 'hooks'), sign(long(phases.roll), 'rolls'),
    sign([triangle(17, 9)], 'at the arrows'), sign([diamond(17, 9)], 'breakpoint'), sign([square(17, 9)], 'begins to roll'), path.contact
      ? sign([ring(17, 9)], 'touches the head pin') : sign([stop(17, 9)], 'ends, not at the head pin'),
    sign([make('line', { x1: 2, x2: 32, y1: 9, y2: 9, stroke: 'var(--text)', 'stroke-dasharray': '2 4' })], 'straight line'),
    ...(line?.exit ? [sign([make('path', { d: 'M17 1v16M11 1h12M11 17h12', stroke: 'var(--text)', 'stroke-width': 2, fill: 'none' })], 'exit board of the pattern')]
      : []),
    ...(seen ? [sign([cross(17, 9)], 'measured crossing')] : []),
    ...oilSigns(map, svg.id));
  document.getElementById('drawn').textContent = `Boards to scale; lengths drawn ${one(shorter)} times shorter than boards.`;
}

const figure = (name, value, small = '') => { const box = item('div'), dd = item('dd', value); if (small) dd.append(item('small', small));
  box.append(item('dt', name), dd); return box; };

function tell() {
  if (!path || !line) return;
  const gutter = path.end === 'gutter';
  document.getElementById('figures').replaceChildren(
    figure('At the arrows', `board ${one(path.arrowsBoard)}`, `at ${arrowsFeet} ft; aimed at ${one(aimedAt())}`),
    figure(`At ${number(plan.downlaneFeet)} ft`, boardAt(plan.downlaneFeet) === null ? 'gutter' : `board ${one(boardAt(plan.downlaneFeet))}`, 'downlane target'),
    figure('Breakpoint', path.breakpointFeet === null ? 'none' : `board ${one(path.breakpointBoard)}`, path.breakpointFeet === null ? 'never heads straight down'
      : `at ${one(path.breakpointFeet)} ft`),
    figure('At 60 ft', gutter ? 'gutter' : `board ${one(path.boardAt60)}`, gutter ? `at ${one(path.endFeet)} ft` : angleWords(path.angleAt60Deg)),
    figure('At the head pin', path.contact ? `board ${one(path.contact.board)}` : 'passes by', path.contact ? `${angleWords(path.contact.angleDeg)}, at the touch` : ''),
    figure('Speed at the end', `${one(path.endSpeedMph)} mph`, `${one(Math.abs(path.speedLossMph))} mph ${path.speedLossMph >= 0 ? 'lost' : 'gained'}`),
    figure('Time', `${two(path.timeS)} s`, 'laydown to end'),
    figure('Skids, hooks, rolls', [path.skidLengthFeet, path.hookLengthFeet, path.rollLengthFeet].map(each => each === null ? '?'
      : number(Math.max(0, each), 0)).join(' · '), 'feet'));
  document.getElementById('short').textContent = gutter ? `Gutter at ${one(path.endFeet)} ft.`
    : `At 60 ft: board ${one(path.boardAt60)}, ${angleWords(path.angleAt60Deg)}.`;
  document.getElementById('trust').textContent = trustWords();
  document.getElementById('boards').replaceChildren(...line.boards.map(place => {
    const row = item('tr');
    row.append(item('th', number(place.feet), { scope: 'row', class: 'number' }),
      item('td', boardAt(place.feet) === null ? '—' : two(boardAt(place.feet)), { class: 'number' }), item('td', two(place.board), { class: 'number' }));
    return row;
  }));

  const field = document.getElementById('line');
  if (!typed && field !== document.activeElement) field.value = line.line;
  const exit = line.exit;
  document.getElementById('line-said').replaceChildren(
    item('li', `Laid down on board ${two(line.laydownBoard)} at the foul line, ${line.launchAngleDeg === 0 ? 'straight' : `${two(Math.abs(line.launchAngleDeg))}° ${line.launchAngleDeg > 0 ? 'outward' : 'inward'}`}; the slide foot ends on board ${one(line.slideBoard)}.`),
    ...(line.offTheLaneFeet === null ? [] : [item('li', `The straight line leaves the boards before ${number(line.offTheLaneFeet)} ft: the ball must hook before that.`)]),
    ...(exit ? [item('li', `Exit of the oil: board ${one(exit.board)} at ${one(exit.feet)} ft (length less 31, common practice: a place to start). ${boardAt(exit.feet) === null ? 'The ball does not get there.' : `The ball is on board ${one(boardAt(exit.feet))} there.`}`)]
      : [item('li', 'This pattern has no exit board: none is told for lengths outside of 32 to 52 ft.')]));
  document.getElementById('moves').replaceChildren(...line.moves.map(each => {
    const row = item('tr'), name = item('th', each.name, { scope: 'row' });
    name.append(item('small', each.parallel ? 'parallel' : 'angular'));
    const cells = [0, 15, 30, 45, 60].map(feet => { const by = each.shifts.find(shift => shift.feet === feet).boards;
      return item('td', `${by > 0 ? '+' : by < 0 ? '−' : ''}${one(Math.abs(by))}`, { class: 'number' }); });
    const take = item('td', '', { class: 'row' });
    for (const [way, sense] of [['in', 1], ['out', -1]]) {
      const button = item('button', way, { type: 'button', 'aria-label': `${each.name} ${way}`, 'data-key': `${each.name}-${way}` });
      button.addEventListener('click', () => move(sense * each.feetBoards, sense * each.targetBoards));
      take.append(button);
    }
    row.append(name, ...cells, take);
    return row;
  }));
  document.getElementById('walk').replaceChildren(...(line.walk ?? []).map(each => {
    const row = item('tr');
    row.append(item('th', each.line, { scope: 'row' }), ...[one(each.laydownBoard), `${two(Math.abs(each.launchAngleDeg))}° ${each.launchAngleDeg >= 0 ? 'out' : 'in'}`,
      one(each.slideBoard)].map(text => item('td', text, { class: 'number' })));
    return row;
  }));
  tellSeen();
}

function tellSeen() {
  const box = document.getElementById('seen');
  if (!seen) { box.replaceChildren(); return; }
  const words = [`${seen.shots.length === 0 ? 'No shot of it was seen on the boards.' : `${seen.shots.length} shots seen on the boards${seen.simulated ? '; simulated: invented' : ''}.`}`];
  if (seen.hand !== plan.hand) words.push(`They are of a ${seen.hand}-hander; this plan is for the ${plan.hand} hand, so their boards count from the other edge.`);
  const places = new Map();
  for (const shot of seen.shots) for (const place of shot.places) places.set(place.feet, [...(places.get(place.feet) ?? []), place.board]);
  const table = item('table'), head = item('thead'), row = item('tr'), body = item('tbody');
  for (const name of ['Feet', 'Shots', 'Mean board', 'Plan', 'Shots inside of it by']) row.append(item('th', name, { scope: 'col', class: 'number' }));
  for (const [feet, boards] of [...places].sort(([a], [b]) => a - b)) {
    const mean = boards.reduce((sum, each) => sum + each, 0) / boards.length, planned = boardAt(feet), line = item('tr');
    line.append(item('th', number(feet, 1), { scope: 'row', class: 'number' }),
      ...[String(boards.length), two(mean), planned === null ? '—' : two(planned), planned === null ? '—'
      : two(mean - planned)].map(text => item('td', text, { class: 'number' })));
    body.append(line);
  }
  head.append(row);
  table.append(head, body);
  const scroll = item('div', '', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': 'Measured crossings beside the plan' });
  scroll.append(table);
  box.replaceChildren(item('p', words.join(' ')), ...(places.size ? [scroll] : []));
}

// What was typed stays until it is used or the plan is changed in another way: an answer that was still on its way does not write over it.
document.getElementById('line').addEventListener('input', () => { typed = true; });
document.getElementById('notation').addEventListener('submit', async event => {
  event.preventDefault();
  const words = document.getElementById('line').value, answer = await send('POST', '/api/plan/line', { hand: plan.hand, line: words });
  say('notation', answer.ok ? '' : `Line: ${why(answer)}`);
  if (!answer.ok) return;
  const { laydownBoard, arrowsBoard } = answer.body, launchAngleDeg = angleOf(laydownBoard, arrowsBoard);
  if (laydownBoard < 0.5 || laydownBoard > 39.5 || Math.abs(launchAngleDeg) > 10) { say('notation',
    `Line: found one that starts on board ${two(laydownBoard)} at ${two(launchAngleDeg)} degrees; allowed: boards 0.5 to 39.5 and up to 10 degrees at the foul line.`);
    return; }
  const far = Number(words.trim().split(/\s+/)[1]?.split('@')[1]);
  document.getElementById('line').blur();
  if (far >= 20 && far <= 59) plan.downlaneFeet = far;
  setLine(laydownBoard, launchAngleDeg);
});

document.getElementById('session').addEventListener('change', async event => {
  seen = null;
  if (event.target.value) {
    const answer = await send('GET', `/api/plan/crossings/${encodeURIComponent(event.target.value)}`);
    say('session', answer.ok ? '' : why(answer));
    if (answer.ok) seen = answer.body;
  }
  draw();
  tellSeen();
});

document.getElementById('train').addEventListener('click', () => train({
  arrowsBoard: path?.arrowsBoard ?? null, arrowsFeet, downlaneBoard: boardAt(plan.downlaneFeet), downlaneFeet: plan.downlaneFeet,
  laydownBoard: plan.laydownBoard, launchAngleDeg: plan.launchAngleDeg, speedMph: plan.speedMph, revsRpm: plan.revsRpm,
}, null, words => say('train', words)));

document.getElementById('reset').addEventListener('click', () => { reset(); });
addEventListener('resize', draw);
onChange(() => { typed = false; renew(); });
