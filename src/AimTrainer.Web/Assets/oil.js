// The lane with its oil, for the pages of planning: shade and grain both say how much oil there is, so that neither colour nor shade alone has to.

import { drawLane } from '/assets/drawing.js';
import { item, number } from '/assets/words.js';
import { profile } from '/assets/plan.js';

const ns = 'http://www.w3.org/2000/svg';
export const make = (name, attributes = {}, text) => {
  const node = document.createElementNS(ns, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, typeof value === 'number' ? Math.round(value * 100) / 100 : value);
  if (text !== undefined) node.textContent = text;
  return node;
};

const levels = [0.15, 0.45, 0.75, Infinity];
const level = (units, most) => units <= 0.005 * most || most === 0 ? 0 : 1 + levels.findIndex(share => units <= share * most);

// Grain: from few thin lines to a dense weave.
const grain = [null, ['M0 4H8'], ['M0 2H8M0 6H8'], ['M0 2H8M0 6H8', 'M4 0V8'], ['M0 1H8M0 3H8M0 5H8M0 7H8', 'M2 0V8M6 0V8']];
const shade = [0, 0.14, 0.28, 0.42, 0.58];

function patterns(id) {
  const defs = make('defs');
  for (let each = 1; each < grain.length; each++) {
    const one = make('pattern', { id: `${id}-${each}`, width: 8, height: 8, patternUnits: 'userSpaceOnUse' });
    one.append(make('rect', { width: 8, height: 8, fill: 'var(--oil)', 'fill-opacity': shade[each] }));
    for (const d of grain[each]) one.append(make('path', { d, stroke: 'var(--oil-line)', 'stroke-width': 0.8, 'stroke-opacity': 0.75 }));
    defs.append(one);
  }
  return defs;
}

/** Draws the lane with a map of its oil; gives back its scale. */
export function drawOiledLane(svg, map, hand) {
  const scale = drawLane(svg, profile, null, [], hand), id = `${svg.id}-oil`, group = make('g');
  const left = board => scale.right - board * scale.perBoard;
  let open = new Map();
  const close = rect => group.append(make('rect', { x: left(rect.to), y: scale.down(rect.feet + rect.rows), width: (rect.to - rect.from + 1) * scale.perBoard,
    height: rect.rows * scale.foot, fill: `url(#${id}-${rect.level})` }));
  for (let feet = 0; feet < 60; feet++) {
    const row = map.units[feet].map((units, at) => level((units + map.units[feet + 1][at]) / 2, map.mostUnits)), now = new Map();
    for (let from = 1; from <= 39;) {
      let to = from;
      while (to < 39 && row[to] === row[from - 1]) to++;
      if (row[from - 1] > 0) {
        const name = `${from} ${to} ${row[from - 1]}`, before = open.get(name);
        now.set(name, before ? { ...before, rows: before.rows + 1 } : { from, to, level: row[from - 1], feet, rows: 1 });
      }
      from = to + 1;
    }
    for (const [name, rect] of open) if (!now.has(name)) close(rect);
    open = now;
  }
  for (const rect of open.values()) close(rect);
  svg.prepend(patterns(id));
  svg.insertBefore(group, [...svg.children].find(node => node.tagName === 'circle' || node.tagName === 'path') ?? null);
  for (let board = 5; board < 39; board += 5) {
    svg.append(make('text', { x: scale.across(board), y: scale.down(0) - 5, 'text-anchor': 'middle', 'font-size': 12, fill: 'var(--text)', stroke: 'var(--ground)',
      'stroke-width': 3, 'paint-order': 'stroke' }, board));
  }
  return scale;
}

/** A sign for a legend: a small drawing and its words. */
export function sign(draw, words) {
  const li = item('li'), svg = make('svg', { width: 34, height: 18, viewBox: '0 0 34 18', 'aria-hidden': 'true' });
  svg.append(...draw);
  li.append(svg, item('span', words));
  return li;
}

/** What the grains of the oil mean, in units. */
export function oilSigns(map, id) {
  if (map.mostUnits === 0) return [sign([make('rect', { width: 34, height: 18, fill: 'var(--wood-1)' })], 'no oil')];
  const edges = [0, ...levels.slice(0, -1).map(share => share * map.mostUnits), map.mostUnits];
  return [1, 2, 3, 4].map(each => sign(
    [make('rect', { width: 34, height: 18, fill: 'var(--wood-1)' }), make('rect', { width: 34, height: 18, fill: `url(#${id}-oil-${each})` })],
    `${each === 1 ? 'up to' : `${number(edges[each - 1], 0)} to`} ${number(edges[each], 0)} units of oil`));
}
