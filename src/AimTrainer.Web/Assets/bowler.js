import { follow } from '/assets/live.js';
import { drawLane } from '/assets/drawing.js';
import { mark, missWords, number, phaseWords, progress, targetWords } from '/assets/words.js';

const $ = id => document.getElementById(id);
const lane = JSON.parse($('lane-profile').textContent);

follow(Number($('bowler').dataset.station), 'bowler', show, up => { $('link').hidden = up; });

function show(state) {
  const throwing = state.phase === 'throwing';
  $('who').textContent = state.bowler ? `· ${state.bowler}` : '';
  $('now').textContent = throwing ? state.aim.targets.map(each => `${number(each.target.centreBoard)} at ${number(each.target.distanceFeet, 1)} ft`).join(', then ')
    : { waiting: 'Soon', paused: 'Paused', ended: 'Done' }[state.phase] ?? 'Lane free';
  $('then').textContent = throwing ? `Shot ${state.nextNumber}: ${state.aim.targets.map(each => `${each.name}, ${targetWords(each.target)}`).join('; ')}`
    : state.phase ? `${state.drill.name}: ${phaseWords[state.phase]}` : 'No session runs here.';
  drawLane(document.querySelector('svg.lane'), lane, state.aim, [], state.hand);
  $('told').replaceChildren(...(state.told.results.length ? [...state.told.results].reverse().map(result => line(result, state.hand)) : [plain('Nothing yet; the drill says when.')]));
  $('far').textContent = state.block ? `${state.block.name}: ${progress(state.block)}` : '';
}

function plain(words) {
  const li = document.createElement('li');
  li.textContent = words;
  return li;
}

function line(told, hand) {
  const [sign, kind, words] = mark(told.held);
  const li = plain('');
  const badge = document.createElement('span');
  badge.className = `mark ${kind}`;
  badge.setAttribute('role', 'img');
  badge.setAttribute('aria-label', words);
  badge.textContent = sign;
  const sides = told.targets.map(target => `${told.targets.length > 1 ? `${target.name}: ` : ''}${sideWords(target, hand)}`).join('; ');
  const text = document.createElement('span');
  text.textContent = `Shot ${told.number}: ${words}${sides ? `, ${sides}` : ''}`;
  li.append(badge, text);
  return li;
}

function sideWords(target, hand) {
  if (target.missBoards !== null && target.missBoards !== undefined) return missWords(target.missBoards, hand);
  if (target.side === null || target.side === undefined) return 'not measured';
  if (target.side === 0) return 'on the centre';
  const inside = target.side > 0;
  return `${(hand === 'left') === inside ? 'right' : 'left'} (${inside ? 'inside' : 'outside'})`;
}
