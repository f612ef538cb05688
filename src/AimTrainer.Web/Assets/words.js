// Words and numbers for people: the same everywhere in the console.

const unitKey = 'aimtrainer.unit';
const names = { boards: ['board', 'boards'], inches: ['in', 'in'], centimetres: ['cm', 'cm'] };
let inchesPerBoard = 41.5 / 39;

/** Whose boards are spoken of: a lane's own width. */
export const useLane = lane => { inchesPerBoard = lane.widthInches / 39; };

const chosen = () => { try { return localStorage.getItem(unitKey); } catch { return null; } };
export const unit = () => (chosen() in names ? chosen() : 'boards');

/** Lengths are told in this unit from now on, on every open page of this browser. */
export function chooseUnit(name) {
  try { localStorage.setItem(unitKey, name); } catch { /* Nothing is kept in this browser; the choice holds for this page. */ }
  dispatchEvent(new Event('aimtrainer:unit'));
}

addEventListener('storage', event => { if (event.key === unitKey) dispatchEvent(new Event('aimtrainer:unit')); });

export const number = (value, digits = 2) => value === null || value === undefined ? '?' : Number(value.toFixed(digits)).toString();

/** A length across the lane, in the unit that this browser was told. */
export function lengthWords(boards, perBoard = inchesPerBoard) {
  if (boards === null || boards === undefined) return '?';
  const is = unit();
  const value = is === 'boards' ? boards : boards * perBoard * (is === 'centimetres' ? 2.54 : 1);
  const shown = number(value, is === 'boards' ? 2 : 1);
  return `${shown} ${names[is][Math.abs(Number(shown)) === 1 ? 0 : 1]}`;
}

export const sideWords = (inside, hand) => `${(hand === 'left') === inside ? 'right' : 'left'} (${inside ? 'inside' : 'outside'})`;

/** How far a shot missed, to which side in the bowler's own sense. */
export function missWords(miss, hand, perBoard = inchesPerBoard) {
  if (miss === null || miss === undefined) return 'not measured';
  return miss === 0 ? 'on the centre' : `${lengthWords(Math.abs(miss), perBoard)} ${sideWords(miss > 0, hand)}`;
}

export const percent = value => value === null || value === undefined ? '?' : `${Math.round(value * 100)} %`;

export const count = (value, one, many = `${one}s`) => `${value} ${value === 1 ? one : many}`;

export const phaseWords = { waiting: 'waiting to begin', throwing: 'throwing', paused: 'paused', ended: 'over' };

export const mark = held => held === null || held === undefined ? ['?', 'unknown', 'not measured'] : held ? ['●', 'hit', 'hit'] : ['✕', 'miss', 'miss'];

/** How the lane's feed of shots stands; empty where there is none. */
export function feedWords(feed) {
  if (!feed || feed.state === 'absent') return '';
  const age = feed.lastLineAgeSeconds;
  return `Sensor ${feed.state}${age === null || age === undefined ? '' : `, last line ${age < 90 ? `${Math.round(age)} s` : `${Math.round(age / 60)} min`} ago`}`;
}

export const towelWords = 'Wipe the ball with a dry towel; no liquids during play.';

/** In a comparison who throws next: {main, more}. The counts are not there where they would tell what is withheld. */
export function turnWords(turn) {
  const cell = turn.balls.find(each => each.role === turn.due.role);
  const wanted = cell && !turn.isCheck ? `${count(cell.stillWanted, 'more good throw')} with it` : '';
  return {
    main: turn.isCheck ? `Lane check: throw ${turn.due.name}` : `Throw ${turn.due.name}`,
    more: [turn.isCheck ? 'to see whether the lane has moved' : wanted, `line ${turn.line} of ${turn.lines}`].filter(Boolean).join(' · '),
  };
}

/** The signs of balls, by their place in the drill's order; told apart by shape first. */
export const ballSigns = ['●', '■', '▲', '▼', '▬', '✚'];

/** How far a block is. */
export function progress(block) {
  if (!block) return '';
  const ends = [
    block.shots && `${block.throws} of ${block.shots} shots`,
    block.minutes && `${block.minutes} min`,
    block.hitsInARow && `until ${block.hitsInARow} held in a row`,
    block.widthReachedBoards && `until ${lengthWords(block.widthReachedBoards)} wide`,
  ].filter(Boolean);
  return ends.length ? ends.join(', ') : count(block.throws, 'shot');
}

export const placeWords = target => `board\u00a0${number(target.centreBoard)} at\u00a0${number(target.distanceFeet, 1)}\u00a0ft`;

export const targetWords = target => `${placeWords(target)}, ${lengthWords(target.widthBoards)} wide`;

/** A time as this browser's clock and zone tell it. */
export function timeWords(text) {
  const time = new Date(text);
  if (Number.isNaN(time.getTime())) return text;
  const two = value => String(value).padStart(2, '0');
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())} ${two(time.getHours())}:${two(time.getMinutes())}`;
}

/** An element with text and attributes. */
export function item(name, text = '', attributes = {}) {
  const node = document.createElement(name);
  node.textContent = text;
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
}

/** Renews a part of the page; what had the keyboard keeps it, when it is still there (same data-key). */
export function keepFocus(root, renew) {
  const key = root.contains(document.activeElement) ? document.activeElement.closest('[data-key]')?.dataset.key : undefined;
  renew();
  if (key !== undefined) [...root.querySelectorAll('[data-key]')].find(each => each.dataset.key === key)?.focus({ preventScroll: true });
}
