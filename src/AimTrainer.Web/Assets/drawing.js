// Draws a lane as the bowler sees it from the approach: the right edge is right, the pins are up. Inches across, length at a quarter.

const ns = 'http://www.w3.org/2000/svg';
const quarter = 3; // Units a foot: 12 inches at a quarter.
const gutter = 9.25;

export const make = (name, attributes = {}, text) => {
  const node = document.createElementNS(ns, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  if (text !== undefined) node.textContent = text;
  return node;
};

/** Inches from the left edge of the drawn lane to a bowler's board. */
export function acrossOf(board, hand, lane) {
  const fromRight = hand === 'left' ? 40 - board : board;
  return lane.widthInches - (fromRight - 0.5) * lane.widthInches / 39;
}

const downOf = feet => (60 - feet) * quarter;

const markOf = shot => shot.held === null || shot.held === undefined ? 'unknown' : shot.held ? 'hit' : 'miss';

/** Draws the whole lane with an aim and shots, newest first. */
export function drawLane(svg, lane, aim, shots, hand) {
  const width = lane.widthInches;
  svg.setAttribute('viewBox', `${-gutter - 8} -6 ${width + 2 * gutter + 10} ${60 * quarter + 14}`);
  svg.setAttribute('preserveAspectRatio', 'xMidYMid meet');
  svg.replaceChildren();
  svg.append(make('rect', { x: -gutter, y: 0, width: width + 2 * gutter, height: 60 * quarter, fill: 'var(--gutter)' }));
  for (let board = 1; board <= 39; board++) {
    const x = acrossOf(board + 0.5, 'right', lane);
    svg.append(make('rect', { x, y: 0, width: width / 39, height: 60 * quarter, fill: board % 2 ? 'var(--wood-1)' : 'var(--wood-2)' }));
  }

  for (const marker of lane.markers) {
    const x = acrossOf(marker.boardFromRight, 'right', lane), y = downOf(marker.feet);
    svg.append(marker.kind === 'arrow'
      ? make('path', { d: `M${x} ${y - 2.4}l1.1 4h-2.2z`, fill: 'var(--quiet)' })
      : make('circle', { cx: x, cy: y, r: 0.7, fill: 'var(--quiet)' }));
  }

  for (const feet of [15, 30, 45, 60]) {
    svg.append(make('text', { x: -gutter - 1, y: downOf(feet) + 2, 'font-size': 5, 'text-anchor': 'end', fill: 'var(--quiet)' }, feet));
  }

  svg.append(make('line', { x1: -gutter, x2: width + gutter, y1: downOf(0), y2: downOf(0), stroke: 'var(--text)', 'stroke-width': 0.8 }));
  for (const { target } of aim?.targets ?? []) {
    const left = Math.min(acrossOf(target.centreBoard + target.widthBoards / 2, hand, lane), acrossOf(target.centreBoard - target.widthBoards / 2, hand, lane));
    svg.append(make('rect', {
      x: left, y: downOf(target.distanceFeet) - 2, width: target.widthBoards * width / 39, height: 4,
      fill: 'var(--target)', 'fill-opacity': 0.55, stroke: 'var(--target)', 'stroke-width': 0.5,
    }));
  }

  [...shots].reverse().forEach((shot, index) => drawShot(svg, lane, shot, hand, index === shots.length - 1));
}

function drawShot(svg, lane, shot, hand, newest) {
  if (shot.voidReason) return;
  const colour = `var(--${markOf(shot)})`;
  if (newest) {
    const seen = [
      ...(shot.shot.laydownBoard === null ? [] : [[0, shot.shot.laydownBoard]]),
      ...shot.shot.crossings.map(crossing => [crossing.feet ?? crossing.distanceFeet, crossing.board ?? crossing.boards]),
      ...(shot.shot.entryBoard === null ? [] : [[60, shot.shot.entryBoard]]),
    ].sort((a, b) => a[0] - b[0]);
    if (seen.length > 1) {
      const points = seen.map(([feet, board]) => `${acrossOf(board, hand, lane)},${downOf(feet)}`).join(' ');
      svg.append(make('polyline', { points, fill: 'none', stroke: colour, 'stroke-width': 0.8, 'stroke-dasharray': '2 1.2' }));
    }
  }

  for (const result of shot.targets) {
    if (result.crossing.board === null) continue;
    const x = acrossOf(result.crossing.board, hand, lane), y = downOf(result.target.distanceFeet);
    const held = result.grade?.holds;
    const size = newest ? 1.7 : 0.9, opacity = newest ? 1 : 0.6;
    const tint = held ? 'var(--hit)' : 'var(--miss)';
    svg.append(held
      ? make('circle', { cx: x, cy: y, r: size, fill: tint, opacity })
      : make('path', { d: `M${x - size} ${y - size}l${2 * size} ${2 * size}m0 ${-2 * size}l${-2 * size} ${2 * size}`, stroke: tint, 'stroke-width': newest ? 1 : 0.6, opacity }));
  }
}

/** The boards that a strip for a target shows: ten to either side, on the lane. */
export const stripRange = target => [Math.max(0.5, target.centreBoard - 10), Math.min(39.5, target.centreBoard + 10)];

/** Draws a magnified strip of boards with a target, earlier crossings (newest first) and the place that is picked. */
export function drawStrip(svg, target, crossings, picked, hand) {
  const [low, high] = stripRange(target);
  const width = svg.clientWidth || 320, height = 88, floor = 64;
  const at = board => (hand === 'left' ? board - low : high - board) / (high - low) * width;
  const band = (from, to, attributes) => make('rect', { x: Math.min(at(from), at(to)), y: 0, width: Math.abs(at(to) - at(from)), height: floor, ...attributes });
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren();
  for (let board = Math.ceil(low); board <= Math.floor(high); board++) {
    svg.append(band(Math.max(low, board - 0.5), Math.min(high, board + 0.5), { fill: board % 2 ? 'var(--wood-1)' : 'var(--wood-2)' }));
    if (width / (high - low) > 22 || board % 5 === 0) {
      svg.append(make('text', { x: at(board), y: 82, 'text-anchor': 'middle', 'font-size': 14, fill: 'var(--text)' }, board));
    }
  }

  svg.append(band(target.centreBoard - target.widthBoards / 2, target.centreBoard + target.widthBoards / 2,
    { fill: 'var(--target)', 'fill-opacity': 0.35, stroke: 'var(--target)', 'stroke-width': 1.5 }));
  crossings.forEach((board, index) => {
    if (board >= low && board <= high) svg.append(make('line', { x1: at(board), x2: at(board), y1: index ? 50 : 40, y2: floor, stroke: 'var(--text)', 'stroke-width': index ? 1.5 : 3, opacity: index ? 0.6 : 1 }));
  });
  if (picked !== null) {
    const x = at(Math.min(high, Math.max(low, picked)));
    svg.append(make('path', { d: `M${x} 0l7 12h-14z M${x} 12V${floor}`, stroke: 'var(--hit)', 'stroke-width': 3, fill: 'var(--hit)' }));
  }
}

/** The half board under a pointer on a strip. */
export function boardUnder(svg, event, target, hand) {
  const [low, high] = stripRange(target);
  const box = svg.getBoundingClientRect();
  const part = Math.min(1, Math.max(0, (event.clientX - box.left) / box.width));
  const board = hand === 'left' ? low + part * (high - low) : high - part * (high - low);
  return Math.round(board * 2) / 2;
}
