import { chooseUnit, unit } from '/assets/words.js';

const show = () => { for (const radio of document.querySelectorAll('[name="unit"]')) radio.checked = radio.value === unit(); };
for (const radio of document.querySelectorAll('[name="unit"]')) radio.addEventListener('change', () => chooseUnit(radio.value));
addEventListener('aimtrainer:unit', show);
show();
