// Files in and out. A download link traps a home-screen app on iOS in a page without a way back, so the share sheet
// comes first; opening takes any file, since iPhones refuse to show unknown extensions, and the content decides.

import {Event} from './bridge.js';

function download(file) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

export async function shareFile(post, name, mime, bytes) {
  const file = new File([bytes], name, {type: mime});
  try {
    if (navigator.canShare?.({files: [file]})) await navigator.share({files: [file], title: name});
    else download(file);
    post(Event.shared, name);
  } catch (error) {
    if (error?.name === 'AbortError') {
      post(Event.shared, name, 'cancelled');
    } else {
      download(file);  // share sheet refused (no gesture, not allowed): the file still gets out
      post(Event.shared, name);
    }
  }
}

export async function sharePicture(post, name, width, height, rgba) {
  const canvas = Object.assign(document.createElement('canvas'), {width, height});
  canvas.getContext('2d').putImageData(new ImageData(new Uint8ClampedArray(rgba.buffer), width, height), 0, 0);
  const png = await new Promise((done) => canvas.toBlob(done, 'image/png'));
  if (png) await shareFile(post, name, 'image/png', png);
  else post(Event.shared, name, 'other');
}

export async function copyText(post, text) {
  try {
    await navigator.clipboard.writeText(text);
    post(Event.copied, '', '', 1);
  } catch {
    post(Event.copied, '', '', 0);  // no such thing here, or not allowed
  }
}

export async function shareText(post, text) {
  if (!navigator.share) return copyText(post, text);
  try {
    await navigator.share({text});
    post(Event.shared, '');
  } catch (error) {
    if (error?.name === 'AbortError') post(Event.shared, '', 'cancelled');
    else await copyText(post, text);
  }
}

export function openFile(post) {
  const input = document.createElement('input');
  input.type = 'file';
  input.addEventListener('change', async () => {
    const file = input.files[0];
    if (file) post(Event.fileOpened, file.name, new Uint8Array(await file.arrayBuffer()));
  });
  input.click();
}
