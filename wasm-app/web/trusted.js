// Addresses of scripts that the page starts itself. Under its policy (Trusted Types) a browser starts none that this did
// not hand out.

function beside(address) {
  const url = new URL(address, document.baseURI);
  if (url.origin !== location.origin) throw new TypeError(`a script from elsewhere: ${url}`);
  return url.href;
}

const policy = globalThis.trustedTypes?.createPolicy('bentbook', {createScriptURL: beside});

/** The address of a script that lies beside the page, as Worker and the service worker take it. */
export const scriptAddress = (address) => policy ? policy.createScriptURL(address) : beside(address);
