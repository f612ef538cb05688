import { send, why } from '/assets/live.js';
import { item, number } from '/assets/words.js';
import { make, sign } from '/assets/oil.js';
import { ballAndLane, bowler, change, onChange, onGo, plan, say, setLine, train, trustWords } from '/assets/plan.js';

const one = value => number(value, 1), two = value => number(value, 2);
const percent = share => `${number(share * 100, 0)} of 100`;
const anglesWords = degrees => degrees === 0 ? 'straight' : `${two(Math.abs(degrees))}° ${degrees > 0 ? 'outward' : 'inward'}`;
const names = { laydown: 'laydown', launchAngle: 'launch angle', speed: 'speed', revs: 'revs' };
const drillNames = { 'narrow-at-arrow': 'Narrowing at one arrow', 'set-line-set-speed': 'Set line, set speed', 'same-throw': 'Same throw',
  'two-point-line': 'Two-point line' };
const svg = document.getElementById('map'), readBoard = document.getElementById('read-board'), readAngle = document.getElementById('read-angle');
let advice = null, hand = 'right', cells = null;

/** A step that keeps the map to about 800 lines, so that it is worked out while a person waits. */
const boardStep = () => Math.max(1, Math.ceil((plan.gridLastBoard - plan.gridFirstBoard) / 30));
const angleStep = () => Math.max(0.25, Math.ceil((plan.gridLastAngle - plan.gridFirstAngle) / 30 / 0.25) * 0.25);

const wish = () => ({
  bowler: bowler(), ...ballAndLane(), downlaneFeet: plan.downlaneFeet,
  window: { lowBoard: plan.windowLowBoard, highBoard: plan.windowHighBoard, lowAngleDeg: plan.windowLowAngle, highAngleDeg: plan.windowHighAngle, at: plan.windowAt },
  grid: { firstBoard: plan.gridFirstBoard, lastBoard: plan.gridLastBoard, boardStep: boardStep(), firstAngleDeg: plan.gridFirstAngle, lastAngleDeg: plan.gridLastAngle,
    angleStepDeg: angleStep() },
});

const top = 18, bottom = 44, side = 56, end = 12;
const scale = () => {
  const width = svg.clientWidth || 320, height = svg.clientHeight || 320;
  const { boards, angles } = cells, w = (width - side - end) / boards.length, h = (height - top - bottom) / angles.length;
  const column = at => side + (hand === 'left' ? at : boards.length - 1 - at) * w, row = at => top + (angles.length - 1 - at) * h;
  return { width, height, w, h, column, row };
};

function draw() {
  if (!advice) return;
  const { boards, angles, at, most } = cells, { width, height, w, h, column, row } = scale();
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren(make('rect', { x: side, y: top, width: width - side - end, height: height - top - bottom, fill: 'var(--ground)', stroke: 'var(--edge)' }));
  boards.forEach((board, b) => angles.forEach((angle, a) => {
    const { chance } = at(b, a), part = most > 0 ? chance / most : 0;
    if (chance <= 0) return;
    // The square's area and its shade both say the chance.
    const size = Math.sqrt(part), x = column(b) + w * (1 - size) / 2, y = row(a) + h * (1 - size) / 2;
    svg.append(make('rect', { x: column(b), y: row(a), width: w, height: h, fill: 'var(--hit)', 'fill-opacity': 0.1 + 0.25 * part }),
      make('rect', { x, y, width: w * size, height: h * size, fill: 'var(--hit)', 'fill-opacity': 0.45 + 0.55 * part }));
  }));
  const every = Math.ceil(30 / w), everyAngle = Math.ceil(22 / h);
  boards.forEach((board, b) => { if (b % every === 0) svg.append(make('text',
    { x: column(b) + w / 2, y: height - bottom + 16, 'text-anchor': 'middle', 'font-size': 13, fill: 'var(--text)' }, number(board, 1))); });
  angles.forEach((angle, a) => { if (a % everyAngle === 0) svg.append(make('text',
    { x: side - 6, y: row(a) + h / 2 + 4, 'text-anchor': 'end', 'font-size': 13, fill: 'var(--text)' }, `${number(angle, 2)}°`)); });
  svg.append(make('text', { x: side + (width - side - end) / 2, y: height - 8, 'text-anchor': 'middle', 'font-size': 13, fill: 'var(--quiet)' }, 'laydown board'),
    make('text', { x: 2, y: 12, 'font-size': 13, fill: 'var(--quiet)' }, 'launch angle, outward'));
  const best = advice.best, [firstBoard, firstAngle] = [boards[0], angles[0]], stepBoard = boards.length > 1 ? boards[1] - boards[0] : 1, stepAngle = angles.length > 1
    ? angles[1] - angles[0] : 1;
  const b = (best.laydownBoard - firstBoard) / stepBoard, a = (best.launchAngleDeg - firstAngle) / stepAngle;
  const x = column(b) + w / 2, y = row(a) + h / 2;
  const star = `M${x} ${y - 11}l11 11l-11 11l-11 -11z`;
  svg.append(make('path', { d: star, fill: 'none', stroke: 'var(--ground)', 'stroke-width': 5 }),
    make('path', { d: star, fill: 'none', stroke: 'var(--text)', 'stroke-width': 2.5 }));
  const read = [column(Number(readBoard.value)), row(Number(readAngle.value))];
  svg.append(make('rect', { x: read[0] - 1, y: read[1] - 1, width: w + 2, height: h + 2, fill: 'none', stroke: 'var(--target)', 'stroke-width': 2.5 }));
  svg.setAttribute('aria-label', `Chance for ${boards.length} laydowns by ${angles.length} launch angles; the best is ${percent(best.chance)}, laid down on board ${one(best.laydownBoard)}, ${anglesWords(best.launchAngleDeg)}. The numbers are in the table below.`);
  const legend = document.getElementById('map-legend');
  const box = part => { const size = 18 * Math.sqrt(part); return make('rect',
    { x: 17 - size / 2, y: 9 - size / 2, width: size, height: size, fill: 'var(--hit)', 'fill-opacity': 0.45 + 0.55 * part }); };
  legend.replaceChildren(...[0.1, 0.25, 0.5, 1].map(part => sign([box(part)], percent(most * part))),
    sign([make('path', { d: 'M17 1l8 8l-8 8l-8 -8z', fill: 'none', stroke: 'var(--text)', 'stroke-width': 2.5 })], 'best line'),
    sign([make('rect', { x: 9, y: 1, width: 16, height: 16, fill: 'none', stroke: 'var(--target)', 'stroke-width': 2.5 })], 'the line that is read'));
  read1();
}

function read1() {
  const { boards, angles, at } = cells, b = Number(readBoard.value), a = Number(readAngle.value), cell = at(b, a);
  const words = `Board ${one(boards[b])}, ${anglesWords(angles[a])}: ${percent(cell.chance)} reach the window (counted, ±${number(cell.error * 100, 0)}).`;
  document.getElementById('read').textContent = words;
  readBoard.setAttribute('aria-valuetext', `board ${one(boards[b])}`);
  readAngle.setAttribute('aria-valuetext', anglesWords(angles[a]));
}

function table() {
  const { boards, angles, at } = cells, head = item('tr'), body = item('tbody');
  const few = boards.map((_, b) => b).filter(b => b % Math.max(1, Math.round(2 / (boards[1] - boards[0] || 1))) === 0),
    some = angles.map((_, a) => a).filter(a => a % 2 === 0).reverse();
  const across = hand === 'left' ? few : [...few].reverse();
  head.append(item('th', 'Angle', { scope: 'col' }), ...across.map(b => item('th', number(boards[b], 1), { scope: 'col', class: 'number' })));
  for (const a of some) {
    const row = item('tr');
    row.append(item('th', `${number(angles[a], 2)}°`, { scope: 'row' }), ...across.map(b => item('td', number(at(b, a).chance * 100, 0), { class: 'number' })));
    body.append(row);
  }
  const thead = item('thead');
  thead.append(head);
  document.getElementById('map-table').replaceChildren(item('caption',
    'Throws of 100 that reach the window, by laydown board (columns) and launch angle outward (rows).'), thead, body);
}

const figure = (name, value, small = '') => { const box = item('div'), dd = item('dd', value); if (small) dd.append(item('small', small));
  box.append(item('dt', name), dd); return box; };

function done(answer, asked) {
  advice = answer;
  hand = asked.bowler.hand;
  const boards = [...new Set(answer.map.map(cell => cell.laydownBoard))], angles = [...new Set(answer.map.map(cell => cell.launchAngleDeg))];
  cells = { boards, angles, at: (b, a) => answer.map[b * angles.length + a], most: Math.max(...answer.map.map(cell => cell.chance)) };
  for (const [slider, list, at] of [[readBoard, boards, answer.best.laydownBoard], [readAngle, angles, answer.best.launchAngleDeg]]) {
    slider.min = '0'; slider.max = String(list.length - 1); slider.step = '1';
    slider.value = String(list.reduce((near, value, index) => Math.abs(value - at) < Math.abs(list[near] - at) ? index : near, 0));
  }
  for (const id of ['map-box', 'best-box', 'worth-box']) document.getElementById(id).hidden = false;
  document.getElementById('map-none').hidden = true;
  draw();
  table();

  const best = answer.best, room = best.room;
  document.getElementById('figures').replaceChildren(
    figure('At the arrows', `board ${one(best.arrowsBoard)}`, `at ${number(best.arrowsFeet)} ft`),
    figure(`At ${number(best.downlaneFeet)} ft`, best.downlaneBoard === null ? 'gutter' : `board ${one(best.downlaneBoard)}`, 'downlane target'),
    figure('Laid down on', `board ${one(best.laydownBoard)}`, anglesWords(best.launchAngleDeg)),
    figure('Reaches the window', percent(best.chance), `counted, ±${one(best.chanceError * 100)}`));
  const signed = boards => `${number(Math.abs(boards), 1)} ${boards < 0 ? 'outward' : 'inward'}`;
  const words = [];
  if (!answer.reachesWindow) {
    words.push(`No line of these reaches the window in more than one throw of a hundred. The nearest comes in ${best.meantBoard === null ? 'past the head pin or in a gutter' : `on board ${one(best.meantBoard)} at ${one(best.meantAngleDeg)}°`}: widen the window, since one that is never reached compares nothing.`);
  }
  words.push(answer.laneFitted
    ? `${percent(best.lowChance)} to ${percent(best.highChance)} over nine in ten of the ${answer.lanes} lanes that this may be, by the fit.`
    : 'The lane is taken as exact: how far it may be off is not in these numbers.');
  words.push(`Board in the window ${percent(best.boardChance)}, angle in it ${percent(best.angleChance)}.`);
  words.push(room ? `Room for error: ${signed(room.parallelOutward)} to ${signed(room.parallelInward)} boards with laydown and target alike, ${signed(room.arrowsOutward)} to ${signed(room.arrowsInward)} at the arrows alone.`
    : 'Room for error: none to tell, since the throw that is meant does not reach the window itself.');
  words.push(trustWords());
  document.getElementById('best-said').replaceChildren(...words.map(text => item('li', text)));

  const widest = Math.max(1, ...answer.halving.map(one => one.points));
  document.getElementById('worth').replaceChildren(...[...answer.halving].sort((a, b) => b.points - a.points).map(each => {
    const li = item('li'), clear = each.points > 2 * each.errorPoints,
      meter = make('svg', { class: 'bar', 'aria-hidden': 'true', viewBox: '0 0 100 10', preserveAspectRatio: 'none' });
    meter.append(make('rect', { width: 100, height: 10, fill: 'var(--raised)' }),
      make('rect', { width: Math.max(0, 100 * each.points / widest), height: 10, fill: 'var(--hit)' }));
    const said = item('span');
    said.append(item('strong', `${names[each.spread]}: ${each.points >= 0 ? '+' : '−'}${one(Math.abs(each.points))} points`),
      item('small', ` ±${one(each.errorPoints)}${clear ? '' : ', cannot be told from none'}`));
    const button = item('button', 'Train this', { type: 'button', 'aria-label': `Train this: the ${names[each.spread]}`,
      ...(answer.practise === each.spread ? { class: 'go' } : {}) });
    button.addEventListener('click', () => trainIt(each.spread));
    li.append(said, button, meter);
    return li;
  }));
  const first = item('li', answer.practise ? `So practise the ${names[answer.practise]}: drill \u201c${drillNames[answer.drill] ?? answer.drill}\u201d with this line as its target.` : 'None stands out. Train the line itself.');
  if (!answer.practise) { const button = item('button', 'Train this line', { type: 'button', class: 'go' }); button.addEventListener('click', () => trainIt(null));
    first.append(button); }
  document.getElementById('worth').prepend(first);

  function trainIt(practise) {
    train({
      arrowsBoard: best.arrowsBoard, arrowsFeet: best.arrowsFeet, downlaneBoard: best.downlaneBoard, downlaneFeet: best.downlaneFeet, laydownBoard: best.laydownBoard,
        launchAngleDeg: best.launchAngleDeg,
      speedMph: asked.bowler.speedMph, revsRpm: asked.bowler.revsRpm,
    }, practise, text => say('train', text));
  }
}

for (const slider of [readBoard, readAngle]) slider.addEventListener('input', draw);
svg.addEventListener('click', event => {
  if (!advice) return;
  const { w, h } = scale(), box = svg.getBoundingClientRect(), { boards, angles } = cells;
  const b = Math.floor((event.clientX - box.left - side) / w), a = Math.floor((event.clientY - box.top - top) / h);
  if (b < 0 || a < 0 || b >= boards.length || a >= angles.length) return;
  readBoard.value = String(hand === 'left' ? b : boards.length - 1 - b);
  readAngle.value = String(angles.length - 1 - a);
  draw();
});
document.getElementById('show-line').addEventListener('click', () => { setLine(advice.best.laydownBoard, advice.best.launchAngleDeg); location.href = '/lines'; });

const who = document.getElementById('bowler');
who.addEventListener('change', async () => {
  say('bowler');
  if (!who.value) { change({ bowler: '', correlations: null, bowlerShots: null }); return; }
  const name = who.value;
  let answer = await send('GET', `/api/plan/scatter/${encodeURIComponent(name)}`);
  // What the record has not is taken from the plan, and said.
  const typed = !answer.ok && answer.body?.detail?.includes('axisRotationDeg');
  if (typed) answer = await send('GET', `/api/plan/scatter/${encodeURIComponent(name)}?axisRotationDeg=${plan.axisRotationDeg}&axisTiltDeg=${plan.axisTiltDeg}`);
  if (!answer.ok) { say('bowler', `${name}: ${why(answer)}`); change({ bowler: '', correlations: null, bowlerShots: null }); return; }
  const { bowler: found, shots, simulated } = answer.body, tidy = (value, digits) => Number(value.toFixed(digits));
  const [spreadLaydown, spreadAngle, spreadSpeed, spreadRevs] = found.spreads.map(value => tidy(value, 3));
  change({
    hand: found.hand, speedMph: tidy(found.speedMph, 2), revsRpm: tidy(found.revsRpm, 0), axisRotationDeg: tidy(found.axisRotationDeg, 1),
      axisTiltDeg: tidy(found.axisTiltDeg, 1),
    spreadLaydown, spreadAngle, spreadSpeed, spreadRevs, correlations: found.correlations, bowler: name,
    bowlerShots: `${shots} shots of ${name}${simulated ? ', simulated: invented' : ''}, with their correlations; it holds the sensor\u2019s noise too${typed ? '. The record has no axis rotation: the one typed here is taken' : ''}.`,
  });
});

onChange(() => {
  who.value = [...who.options].some(option => option.value === plan.bowler) ? plan.bowler : '';
  document.getElementById('bowler-said').textContent = plan.bowlerShots ?? 'The throw of the planner, and a scatter as typed, without correlations.';
  document.getElementById('window-said').textContent = `boards ${one(plan.windowLowBoard)} to ${one(plan.windowHighBoard)}, ${one(plan.windowLowAngle)} to ${one(plan.windowHighAngle)}°`;
  document.getElementById('grid-said').textContent = `boards ${one(plan.gridFirstBoard)} to ${one(plan.gridLastBoard)}, ${one(plan.gridFirstAngle)} to ${one(plan.gridLastAngle)}°`;
});
onGo('/api/plan/aim', wish, done);
addEventListener('resize', draw);
