"""An error as a page, for whoever meets it in the address bar."""

from html import escape

from tarebook.errors import TarebookError


def page(problem: TarebookError, style: str) -> str:
    """`style`: the address of the style sheet that gives it its look; "" when there is none."""
    look = f'<link rel="stylesheet" href="{escape(style)}">\n' if style else ""
    return f"""<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Tarebook</title>
{look}</head>
<body>
<main class="shell-main">
<h1>{escape(problem.sentence)}</h1>
<p>{escape(problem.do)}</p>
<p><a href="/">Tarebook</a></p>
</main>
</body>
</html>
"""
