// The few words that the page itself must have before (or without) the app: page.tsv of each language in assets/strings.

import languages from 'page_words';

/** The tag of the language to speak: the app's once it runs, the device's until then. */
const wanted = () => (document.documentElement.dataset.state === 'ready' ? document.documentElement.lang : navigator.language) ?? '';
const primary = (tag) => tag.split('-')[0];

/** As language_of() in core/words: the same tag, else the same language, else the first. */
function nearest(tag = '') {
  return languages.find((l) => l.tag === tag) ?? languages.find((l) => primary(l.tag) === primary(tag)) ?? languages[0];
}

/** The tag of the language that the device asks for, among those that the app has. */
export const deviceLanguage = () => nearest(navigator.language).tag;

export const say = (id) => nearest(wanted()).words[id];
