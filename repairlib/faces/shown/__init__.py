"""What the panels and the page both show, as HTML: no widget in it, and no rule of the trade."""
