// On a web server the page keeps itself for use without a network, by a small file beside
// it. Without that file all works the same.
if (location.protocol === 'https:' && navigator.serviceWorker) {
  navigator.serviceWorker.register('forel-offline.js').catch(() => {});
}
