// Which page writes: of all that stand on one storage the one that holds the lock. A page that is looked at asks the
// holder for it, who hands over when nobody looks at it. take() asks whether or not, and steals the lock from a holder
// that keeps silent (a frozen tab).

const kPatienceMs = 1000;  // a reloaded page's old document lets go of the lock a little late
const kHandOverMs = 2000;

/**
 * @param page {gained(), late(), lost(), settle() → promise: true when everything is stored, stays()}: the lock is had; it
 * was not had at once; it is gone; nothing more is written, and what was handed over is on disk; and yet it is kept
 */
export function makeWriter(world, name, page) {
  const {locks} = world.navigator;
  const visible = () => world.document.visibilityState === 'visible';
  const channel = world.BroadcastChannel ? new world.BroadcastChannel(name) : null;
  let held = null;     // lets go of the lock
  let waiting = null;  // ends a request that waits for it
  let going = false;

  function ask() {
    if (locks && !held && visible()) channel?.postMessage('when nobody looks');
  }

  function request(options) {
    let mine = null;
    locks.request(name, options, () => new Promise((release) => {
      mine = held = release;
      page.gained();
    })).catch((error) => {
      if (mine && held === mine) {
        held = null;
        page.lost();
        queue();
      } else if (!mine && error.name !== 'AbortError') {
        page.gained();  // no locks here: the mark in the storage alone tells pages apart
      }
    });
  }

  function queue() {
    waiting = new AbortController();
    request({signal: waiting.signal});
  }

  function handOver() {
    const release = held;
    held = null;
    page.lost();
    release();
    queue();
  }

  async function asked({data}) {
    if (!held || going || (data === 'when nobody looks' && visible())) return;
    going = true;
    const stored = await page.settle();
    going = false;
    if (held && (stored || data === 'now')) handOver();
    else page.stays();
  }

  if (channel) channel.onmessage = asked;
  world.document.addEventListener('visibilitychange', ask);

  return {
    start() {
      if (!locks) {
        page.gained();
        return;
      }
      queue();
      setTimeout(() => {
        if (held) return;
        page.late();
        ask();
      }, kPatienceMs);
    },
    /** The user wants this page to write. */
    take() {
      if (held || !locks) {
        page.lost();  // it may have been robbed and not know it: what it has was made on older values
        page.gained();
        return;
      }
      channel?.postMessage('now');
      setTimeout(() => {
        if (held) return;
        waiting.abort();
        request({steal: true});
      }, kHandOverMs);
    },
  };
}
