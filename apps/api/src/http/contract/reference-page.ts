/** The reference: a page that reads the document with a viewer served from here. */
export const referencePage = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Endfloat reference</title>
<link rel="icon" href="/docs/assets/favicon-32x32.png">
<link rel="stylesheet" href="/docs/assets/swagger-ui.css">
</head>
<body>
<div id="reference"></div>
<script src="/docs/assets/swagger-ui-bundle.js"></script>
<script src="/docs/start.js"></script>
</body>
</html>
`;

/** Starts the viewer. */
export const referenceStart = `SwaggerUIBundle({ url: '/openapi.json', dom_id: '#reference', deepLinking: true, validatorUrl: null });
`;
