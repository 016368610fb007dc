// Reads a QR code off a picture. Loaded when the camera is first asked for, and only where the browser has no detector.

import jsQR from 'jsqr';

/** @param picture ImageData; the code's text, or undefined. */
export const read = (picture) =>
  jsQR(picture.data, picture.width, picture.height, {inversionAttempts: 'dontInvert'})?.data;
