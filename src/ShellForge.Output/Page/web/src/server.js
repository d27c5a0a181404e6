// The engine behind the page that the command serves: the command itself, asked over the loopback address.
// An engine has: ask(path, body, signal), answered like a fetch; listen({ changed, take }), told when the board file was saved elsewhere
// or another text is to stand in place of all; silent, what to say when it does not answer; shown, what to say of a housing of the file
// as it is saved, null for the page's own words; written(text), if it wants to know what stands in the editor; pause, ms of quiet before a
// housing is asked for; readsBeside, whether mistakes can be asked for while a housing is being made.
export function server() {
  const banner = document.getElementById('live-state');
  const { key } = banner.dataset;
  return {
    silent: 'The command does not answer.',
    shown: null,
    pause: { typed: 250, slid: 90 },
    readsBeside: false,

    // Only this page knows the key: nobody else's page can ask.
    ask: (path, body, signal) => fetch(path, {
      headers: { 'X-Key': key }, ...(body === undefined ? {} : { method: 'POST', body }), signal,
    }),

    listen({ changed }) {
      const events = new EventSource(`/events?${new URLSearchParams({ key })}`);
      let opened = false;
      events.addEventListener('changed', changed);
      events.addEventListener('open', () => { if (opened) changed(); opened = true; });
      // A stream that is refused is closed for good, while the page itself is answered as ever; one whose command has gone is asked for again.
      events.addEventListener('error', () => {
        if (opened || events.readyState !== EventSource.CLOSED) {
          banner.textContent = 'The command has stopped; this page no longer follows the file.';
          return;
        }
        banner.before(Object.assign(document.createElement('p'), {
          id: 'live-apart',
          className: 'live broken',
          textContent: 'This page is open in too many tabs and does not follow the file: close some, then load it again.',
        }));
      });
    },
  };
}
