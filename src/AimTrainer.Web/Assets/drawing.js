// Draws a lane as the bowler sees it from the approach: the right edge is right, the pins are up. Boards are to scale; lengths are
// drawn shorter, so that the whole lane fits. Everything is in the pixels of the picture.

import { number } from '/assets/words.js';

const ns = 'http://www.w3.org/2000/svg';
const gutterInches = 4; // Drawn narrower than they are, for the sake of the boards.
const wholeFeet = 60, top = 6, bottom = 8, side = 22;

const make = (name, attributes = {}, text) => {
  const node = document.createElementNS(ns, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, typeof value === 'number' ? Math.round(value * 100) / 100 : value);
  if (text !== undefined) node.textContent = text;
  return node;
};

/** How a lane lies in its picture: across(board), down(feet), and back. */
export function laneScale(svg, lane, hand) {
  const width = svg.clientWidth || 240, height = svg.clientHeight || 480;
  const inch = (width - side) / (lane.widthInches + 2 * gutterInches), left = side + gutterInches * inch;
  const foot = (height - top - bottom) / wholeFeet;
  const perBoard = lane.widthInches / 39 * inch;
  return {
    width, height, inch, foot, left, right: left + lane.widthInches * inch, perBoard,
    across: board => left + ((hand === 'left' ? board : 40 - board) - 0.5) * perBoard,
    down: feet => top + (wholeFeet - feet) * foot,
    boardAt: x => { const fromLeft = (x - left) / perBoard + 0.5; return hand === 'left' ? fromLeft : 40 - fromLeft; },
    feetAt: y => wholeFeet - (y - top) / foot,
    shorter: inch * 12 / foot,
  };
}

/** Draws the whole lane with an aim, shots (newest first) and what is picked ({feet, board} each). */
export function drawLane(svg, lane, aim, shots, hand, picked = []) {
  const scale = laneScale(svg, lane, hand), { across, down } = scale;
  const edge = gutterInches * scale.inch;
  svg.setAttribute('viewBox', `0 0 ${scale.width} ${scale.height}`);
  svg.replaceChildren(make('rect', {
    x: scale.left - edge, y: down(wholeFeet), width: scale.right - scale.left + 2 * edge, height: wholeFeet * scale.foot, fill: 'var(--gutter)',
  }));
  svg.append(make('rect', { x: scale.left, y: down(wholeFeet), width: scale.right - scale.left, height: wholeFeet * scale.foot, fill: 'var(--wood-1)' }));
  for (let each = 1; each <= 39; each += 2) {
    svg.append(make('rect', { x: scale.left + (each - 1) * scale.perBoard, y: down(wholeFeet), width: scale.perBoard, height: wholeFeet * scale.foot, fill: 'var(--wood-2)' }));
  }

  for (const marker of lane.markers) {
    const x = scale.right - (marker.boardFromRight - 0.5) * scale.perBoard, y = down(marker.feet);
    svg.append(marker.kind === 'arrow'
      ? make('path', { d: `M${x} ${y - 5}l3 9h-6z`, fill: 'var(--quiet)' })
      : make('circle', { cx: x, cy: y, r: 1.6, fill: 'var(--quiet)' }));
  }

  for (const feet of [0, 15, 30, 45, 60]) {
    svg.append(make('text', {
      x: scale.left - edge - 4, y: Math.min(scale.height - 3, Math.max(11, down(feet) + 4)), 'font-size': 12, 'text-anchor': 'end', fill: 'var(--quiet)',
    }, feet));
  }

  svg.append(make('line', { x1: scale.left - edge, x2: scale.right + edge, y1: down(0), y2: down(0), stroke: 'var(--text)', 'stroke-width': 2.5 }));
  for (const { target } of aim?.targets ?? []) {
    const one = across(target.centreBoard + target.widthBoards / 2), other = across(target.centreBoard - target.widthBoards / 2);
    svg.append(make('rect', {
      x: Math.min(one, other), y: down(target.distanceFeet) - 8, width: Math.abs(one - other), height: 16, rx: 2,
      fill: 'var(--target-fill)', 'fill-opacity': 0.5, stroke: 'var(--target)', 'stroke-width': 2,
    }));
  }

  [...shots].reverse().forEach((shot, index) => drawShot(svg, scale, shot, index === shots.length - 1));
  for (const { feet, board } of picked) {
    const x = across(board), y = down(feet);
    svg.append(make('path', { d: `M${x} ${y - 22}V${y + 14}`, stroke: 'var(--ground)', 'stroke-width': 5 }),
      make('path', { d: `M${x} ${y - 22}V${y + 14}M${x - 5} ${y - 22}h10`, stroke: 'var(--ink)', 'stroke-width': 2.5, fill: 'none' }));
  }

  return scale;
}

function drawShot(svg, { across, down }, shot, newest) {
  if (shot.voidReason) return;
  if (newest) {
    const seen = [
      ...(shot.shot.laydownBoard === null ? [] : [[0, shot.shot.laydownBoard]]),
      ...shot.shot.crossings.map(crossing => [crossing.feet ?? crossing.distanceFeet, crossing.board ?? crossing.boards]),
      ...(shot.shot.entryBoard === null ? [] : [[wholeFeet, shot.shot.entryBoard]]),
    ].sort((a, b) => a[0] - b[0]);
    if (seen.length > 1) {
      svg.append(make('polyline', {
        points: seen.map(([feet, board]) => `${across(board)},${down(feet)}`).join(' '),
        fill: 'none', stroke: 'var(--ink)', 'stroke-width': 2, 'stroke-dasharray': '5 4',
      }));
    }
  }

  for (const result of shot.targets) {
    if (result.crossing.board === null) continue;
    const x = across(result.crossing.board), y = down(result.target.distanceFeet);
    const held = result.grade?.holds, size = newest ? 5 : 3, opacity = newest ? 1 : 0.6;
    if (newest) svg.append(make('circle', { cx: x, cy: y, r: 9, fill: 'var(--ground)', 'fill-opacity': 0.85 }));
    svg.append(held
      ? make('circle', { cx: x, cy: y, r: size, fill: 'var(--hit)', opacity })
      : make('path', {
        d: `M${x - size} ${y - size}l${2 * size} ${2 * size}m0 ${-2 * size}l${-2 * size} ${2 * size}`, stroke: 'var(--miss)', 'stroke-width': newest ? 3 : 2, opacity,
      }));
  }
}

const ballShapes = [
  null, 'M-5-5h10v10h-10z', 'M0-6l6 11h-12z', 'M0 6l6-11h-12z', 'M-7-2.5h14v5h-14z', 'M-2.5-7h5v14h-5z',
];

/** The last way of each ball of a comparison ({place, shot} each): the first unbroken with discs, the others in dashes with other shapes. */
export function drawBalls(svg, scale, balls) {
  for (const { place, shot } of balls) {
    const colour = place % 2 === 0 ? 'var(--ink)' : 'var(--target)';
    const seen = [
      ...(shot.shot.laydownBoard === null || shot.shot.laydownBoard === undefined ? [] : [[0, shot.shot.laydownBoard]]),
      ...shot.shot.crossings.map(crossing => [crossing.feet ?? crossing.distanceFeet, crossing.board ?? crossing.boards]),
      ...(shot.shot.entryBoard === null || shot.shot.entryBoard === undefined ? [] : [[wholeFeet, shot.shot.entryBoard]]),
    ].sort((a, b) => a[0] - b[0]).map(([feet, board]) => [scale.across(board), scale.down(feet)]);
    if (seen.length > 1) {
      svg.append(make('polyline', { points: seen.map(at => at.join(',')).join(' '), fill: 'none', stroke: colour, 'stroke-width': 2.5, ...(place === 0 ? {} : { 'stroke-dasharray': '7 5' }) }));
    }
    for (const [x, y] of seen) {
      svg.append(ballShapes[place] === null || ballShapes[place] === undefined
        ? make('circle', { cx: x, cy: y, r: 5, fill: colour, stroke: 'var(--ground)', 'stroke-width': 1.5 })
        : make('path', { d: ballShapes[place], transform: `translate(${x} ${y})`, fill: colour, stroke: 'var(--ground)', 'stroke-width': 1.5 }));
    }
  }
}

/** The boards that a strip for a target shows: ten to either side, on the lane. */
export const stripRange = target => [Math.max(0.5, target.centreBoard - 10), Math.min(39.5, target.centreBoard + 10)];

const margin = 12; // Room for the labels of the first and the last board.

function stripScale(width, low, high, hand) {
  const wide = width - 2 * margin;
  return {
    at: board => margin + (hand === 'left' ? board - low : high - board) / (high - low) * wide,
    boardAt: x => { const part = (x - margin) / wide; return hand === 'left' ? low + part * (high - low) : high - part * (high - low); },
    perBoard: wide / (high - low),
  };
}

function boards(svg, { at, perBoard }, low, high, floor, every) {
  const band = (from, to, attributes) => make('rect', { x: Math.min(at(from), at(to)), y: 0, width: Math.abs(at(to) - at(from)), height: floor, ...attributes });
  for (let board = Math.ceil(low - 0.5); board <= Math.floor(high + 0.5); board++) {
    const from = Math.max(low, board - 0.5), to = Math.min(high, board + 0.5);
    if (to > from) svg.append(band(from, to, { fill: board % 2 ? 'var(--wood-1)' : 'var(--wood-2)' }));
    if (board >= low && board <= high && board % every === 0) {
      svg.append(make('text', { x: at(board), y: floor + 16, 'text-anchor': 'middle', 'font-size': 13, fill: 'var(--text)' }, board));
    }
    if (perBoard > 24) svg.append(make('line', { x1: at(from), x2: at(from), y1: floor - 8, y2: floor, stroke: 'var(--seam)' }));
  }

  return band;
}

/** Draws a strip of boards with a target, earlier crossings (newest first) and the place that is picked. */
export function drawStrip(svg, target, crossings, picked, hand) {
  const [low, high] = stripRange(target);
  const width = svg.clientWidth || 320, height = svg.clientHeight || 84, floor = height - 22;
  const scale = stripScale(width, low, high, hand), { at } = scale;
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren();
  const band = boards(svg, scale, low, high, floor, scale.perBoard > 26 ? 1 : scale.perBoard > 13 ? 2 : 5);
  const edges = [Math.max(low, target.centreBoard - target.widthBoards / 2), Math.min(high, target.centreBoard + target.widthBoards / 2)];
  svg.append(band(...edges, { fill: 'var(--target-fill)', 'fill-opacity': 0.3, stroke: 'var(--target)', 'stroke-width': 2 }));
  crossings.forEach((board, index) => {
    if (board >= low && board <= high) {
      svg.append(make('line', {
        x1: at(board), x2: at(board), y1: index ? floor - 16 : floor - 30, y2: floor,
        stroke: 'var(--ink)', 'stroke-width': index ? 1.5 : 3, opacity: index ? 0.6 : 1,
      }));
    }
  });
  if (picked !== null && picked !== undefined) {
    const x = at(Math.min(high, Math.max(low, picked)));
    svg.append(make('path', { d: `M${x} 8V${floor}`, stroke: 'var(--ground)', 'stroke-width': 6 }),
      make('path', { d: `M${x} 10V${floor}`, stroke: 'var(--hit)', 'stroke-width': 3 }), make('path', { d: `M${x} 14l8 -14h-16z`, fill: 'var(--hit)' }));
  }
}

/** The half board under a pointer on a strip. */
export function boardUnder(svg, event, target, hand) {
  const [low, high] = stripRange(target);
  const box = svg.getBoundingClientRect();
  const board = stripScale(box.width, low, high, hand).boardAt(event.clientX - box.left);
  return Math.round(Math.min(high, Math.max(low, board)) * 2) / 2;
}

/** The boards about a place, much larger, above the finger that hides them. */
export class Lens {
  constructor() {
    this.box = document.createElement('div');
    this.box.className = 'lens';
    this.box.hidden = true;
    this.box.setAttribute('aria-hidden', 'true');
    this.svg = make('svg', { width: '100%', height: '100%' });
    this.box.append(this.svg);
    document.body.append(this.box);
  }

  show(event, board, target, hand) {
    this.box.hidden = false;
    const width = this.box.clientWidth, height = this.box.clientHeight, floor = height - 24, low = board - 3, high = board + 3;
    const scale = stripScale(width, low, high, hand), { at } = scale;
    this.box.style.left = `${Math.min(innerWidth - width - 8, Math.max(4, event.clientX - width / 2))}px`;
    this.box.style.top = `${Math.max(4, event.clientY - height - 48)}px`;
    this.svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    this.svg.replaceChildren();
    const from = Math.max(0.5, low), to = Math.min(39.5, high);
    this.svg.append(make('rect', { x: 0, y: 0, width, height: floor, fill: 'var(--gutter)' }));
    const band = boards(this.svg, scale, from, to, floor, 1);
    const edges = [Math.max(low, target.centreBoard - target.widthBoards / 2), Math.min(high, target.centreBoard + target.widthBoards / 2)];
    if (edges[0] < edges[1]) this.svg.append(band(...edges, { fill: 'var(--target-fill)', 'fill-opacity': 0.35, stroke: 'var(--target)', 'stroke-width': 2 }));
    this.svg.append(make('path', { d: `M${at(board)} 26V${floor}`, stroke: 'var(--ground)', 'stroke-width': 6 }),
      make('path', { d: `M${at(board)} 26V${floor}`, stroke: 'var(--hit)', 'stroke-width': 3 }),
      make('rect', { x: width / 2 - 30, y: 2, width: 60, height: 24, rx: 6, fill: 'var(--panel)' }),
      make('text', { x: width / 2, y: 20, 'text-anchor': 'middle', 'font-size': 19, 'font-weight': 700, fill: 'var(--text)' }, number(board)));
  }

  hide() { this.box.hidden = true; }
}
