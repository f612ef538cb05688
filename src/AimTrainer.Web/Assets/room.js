// Dark room or bright room, as this browser was told; before the first paint, so that nothing flashes.
(() => {
  const key = 'aimtrainer.room', root = document.documentElement;
  const told = () => { try { return localStorage.getItem(key); } catch { return null; } };
  root.dataset.room = told() ?? (matchMedia('(prefers-color-scheme: light)').matches ? 'bright' : 'dark');
  document.addEventListener('DOMContentLoaded', () => {
    const button = document.getElementById('room');
    if (!button) return;
    const name = () => {
      const other = root.dataset.room === 'bright' ? 'Dark' : 'Bright';
      button.querySelector('.long').textContent = `${other} room`;
      button.setAttribute('aria-label', `${other} room`);
    };
    button.addEventListener('click', () => {
      root.dataset.room = root.dataset.room === 'bright' ? 'dark' : 'bright';
      try { localStorage.setItem(key, root.dataset.room); } catch { /* Holds for this page. */ }
      name();
    });
    addEventListener('storage', event => { if (event.key === key && event.newValue) { root.dataset.room = event.newValue; name(); } });
    name();
  });
})();
