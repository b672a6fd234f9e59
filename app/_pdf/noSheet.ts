/** A sheet that can't be printed, said to a person: a page of its own, because the address was opened in a tab. */
export interface NoSheet {
  status: 404 | 409;
  title: string;
  sentence: string;
  link: { href: string; words: string };
}

export function noSheetAnswer({ status, title, sentence, link }: NoSheet): Response {
  const html = `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<link rel="stylesheet" href="/no-sheet.css">
<title>${escaped(title)} · Kitwright</title>
</head>
<body>
<main>
<h1>${escaped(title)}</h1>
<p>${escaped(sentence)}</p>
<p><a href="${escaped(link.href)}">${escaped(link.words)}</a></p>
</main>
</body>
</html>
`;
  return new Response(html, {
    status,
    headers: { 'Content-Type': 'text/html; charset=utf-8', 'Cache-Control': 'no-store' },
  });
}

const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escaped(text: string): string {
  return text.replaceAll(/[&<>"]/g, (sign) => ESCAPES[sign] ?? sign);
}
