// A plain script, run before anything is drawn, so that the page never flashes in the wrong theme.
(() => {
  const themes = ['device', 'light', 'dark'];
  const labels = { device: 'Theme: auto', light: 'Theme: light', dark: 'Theme: dark' };
  const kept = localStorage.getItem('theme');
  let theme = themes.includes(kept) ? kept : 'device';

  function apply() {
    document.documentElement.dataset.theme = theme;
    const button = document.getElementById('theme');
    if (button) {
      button.textContent = labels[theme];
    }
    window.dispatchEvent(new Event('themechange'));
  }

  apply();
  document.addEventListener('DOMContentLoaded', () => {
    apply();
    document.getElementById('theme').addEventListener('click', () => {
      theme = themes[(themes.indexOf(theme) + 1) % themes.length];
      localStorage.setItem('theme', theme);
      apply();
    });
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', apply);
  });
})();
