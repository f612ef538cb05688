// Words and numbers for people: the same everywhere in the console.

const units = { boards: 1, inches: 41.5 / 39, centimetres: 41.5 / 39 * 2.54 };
const shortUnit = { boards: 'boards', inches: 'in', centimetres: 'cm' };
export const unit = () => (localStorage.getItem('aimtrainer.unit') in units ? localStorage.getItem('aimtrainer.unit') : 'boards');

export const number = (value, digits = 2) => value === null || value === undefined ? '?' : Number(value.toFixed(digits)).toString();

/** How far a shot missed, to which side in the bowler's own sense. */
export function missWords(miss, hand) {
  if (miss === null || miss === undefined) return 'not measured';
  if (miss === 0) return 'on the centre';
  const inside = miss > 0;
  const side = (hand === 'left') === inside ? 'right' : 'left';
  const length = Math.abs(miss) * units[unit()];
  return `${number(length, unit() === 'boards' ? 2 : 1)} ${unit() === 'boards' && Math.abs(miss) === 1 ? 'board' : shortUnit[unit()]} ${side} (${inside ? 'inside' : 'outside'})`;
}

export const percent = value => value === null || value === undefined ? '?' : `${Math.round(value * 100)} %`;

export const count = (value, one, many = `${one}s`) => `${value} ${value === 1 ? one : many}`;

export const phaseWords = { waiting: 'waiting to begin', throwing: 'throwing', paused: 'paused: shots are set aside', ended: 'over' };

export const mark = held => held === null || held === undefined ? ['?', 'unknown', 'not measured'] : held ? ['●', 'hit', 'hit'] : ['✕', 'miss', 'miss'];

/** How far a block is. */
export function progress(block) {
  if (!block) return '';
  const ends = [
    block.shots && `${block.throws} of ${block.shots} shots`,
    block.minutes && `${block.minutes} min`,
    block.hitsInARow && `until ${block.hitsInARow} held in a row`,
    block.widthReachedBoards && `until ${number(block.widthReachedBoards)} boards wide`,
  ].filter(Boolean);
  return ends.length ? ends.join(', ') : count(block.throws, 'shot');
}

export const targetWords = target => `board ${number(target.centreBoard)} at ${number(target.distanceFeet, 1)} ft, ${number(target.widthBoards)} wide`;
