// Dark room or bright room, as this browser was told; before the first paint, so that nothing flashes.
const room = localStorage.getItem('aimtrainer.room') ?? (matchMedia('(prefers-color-scheme: light)').matches ? 'bright' : 'dark');
document.documentElement.dataset.room = room;
document.addEventListener('DOMContentLoaded', () => {
  const button = document.getElementById('room');
  if (!button) return;
  const name = () => { button.textContent = document.documentElement.dataset.room === 'bright' ? 'Dark room' : 'Bright room'; };
  button.addEventListener('click', () => {
    const next = document.documentElement.dataset.room === 'bright' ? 'dark' : 'bright';
    document.documentElement.dataset.room = next;
    localStorage.setItem('aimtrainer.room', next);
    name();
  });
  name();
});
