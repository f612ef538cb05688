import { follow } from '/assets/live.js';
import { drawLane } from '/assets/drawing.js';
import { item, lengthWords, mark, missWords, phaseWords, placeWords, progress, sideWords, towelWords, turnWords, useLane } from '/assets/words.js';

const $ = id => document.getElementById(id);
const lane = JSON.parse($('lane-profile').textContent);
const drawing = document.querySelector('svg.lane');
let state = null;
useLane(lane);

follow(Number($('bowler').dataset.station), 'bowler', show, (up, words) => {
  $('link').hidden = up;
  $('link').textContent = words ?? 'The host does not answer; this page goes on by itself when it does.';
});

function show(next) {
  state = next;
  const throwing = state.phase === 'throwing' && state.aim;
  $('who').textContent = state.bowler ? `· ${state.bowler}` : '';
  $('now').textContent = throwing ? state.aim.targets.map(each => placeWords(each.target)).join(', then ').replace(/^b/, 'B')
    : { waiting: 'Soon', paused: 'Paused', ended: 'Done' }[state.phase] ?? 'Lane free';
  $('then').textContent = throwing ? `Shot ${state.nextNumber} · ${state.aim.targets.map(each => `${each.name}, ${lengthWords(each.target.widthBoards)} wide`).join('; ')}`
    : state.phase ? `${state.drill.name}: ${phaseWords[state.phase]}` : 'No session runs here.';
  const turn = throwing ? state.turn : null;
  $('ball').hidden = !turn;
  if (turn) {
    const { main, more } = turnWords(turn);
    const where = $('now').textContent;
    $('now').textContent = main;
    $('then').textContent = `${where} · ${$('then').textContent}`;
    $('ball').textContent = `${more}. ${towelWords}`;
  }
  drawLane(drawing, lane, state.phase === 'throwing' ? state.aim : null, [], state.hand);
  const [last, ...before] = [...state.told.results].reverse();
  $('last').replaceChildren(...(last ? [badge(last), words(last)] : [state.phase ? 'Nothing yet; the drill says when.' : 'Nothing.']));
  $('told').replaceChildren(...before.map(result => { const li = item('li'); li.append(badge(result), item('span', words(result), { class: 'said' })); return li; }));
  const after = state.turns?.places.find(place => place.isNext);
  if (after) $('who').textContent += ` throws, then ${after.screenName}`;
  $('far').textContent = state.block ? `${state.block.name}: ${progress(state.block)}` : '';
}

function badge(told) {
  const [sign, kind, heard] = mark(told.held);
  return item('span', sign, { class: `mark ${kind}`, role: 'img', 'aria-label': heard });
}

function words(told) {
  const sides = told.targets.map(target => `${told.targets.length > 1 ? `${target.name}: ` : ''}${side(target)}`).filter(Boolean).join('; ');
  return `Shot ${told.number}: ${mark(told.held)[2]}${sides && told.held !== null ? `, ${sides}` : ''}`;
}

function side(target) {
  if (target.missBoards !== null && target.missBoards !== undefined) return missWords(target.missBoards, state.hand);
  if (target.side === null || target.side === undefined) return '';
  return target.side === 0 ? 'on the centre' : sideWords(target.side > 0, state.hand);
}

new ResizeObserver(() => { if (state) show(state); }).observe(drawing.parentElement);
addEventListener('aimtrainer:unit', () => { if (state) show(state); });
