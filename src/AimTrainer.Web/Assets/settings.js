import { unit } from '/assets/words.js';

const choice = document.getElementById('unit');
choice.value = unit();
choice.addEventListener('change', () => localStorage.setItem('aimtrainer.unit', choice.value));
