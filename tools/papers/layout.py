"""Where every word of a PDF stands, as poppler sees it, and what must not be: words beyond the margins, words on words, a
heading at the foot of a page or parted from what it leads to, a page left half empty."""

import re
import subprocess
from dataclasses import dataclass, replace

# Common practice, no source: what a printer cannot print, in points.
PRINTABLE = 12.0
# What the papers leave free at the left and the right, and the lines above and below that every page says alike.
SIDE = 54.0
ABOVE = 50.0
BELOW = 40.0
# The least size of a heading; what is said below it is smaller.
HEADING = 10.2
# A heading with no more lines than these below it at the foot of a page leads to what stands on the next.
LEAST_BELOW = 3
# A page ends above this share of its height only where something follows that asks for a page of its own.
LEAST_FILLED = 0.5
# As far as boxes of words may reach into one another: they are as high as the font, not as the letters.
HAIR = 1.0


@dataclass(frozen=True)
class Word:
    left: float
    top: float
    right: float
    bottom: float
    text: str

    @property
    def size(self):
        return self.bottom - self.top


@dataclass(frozen=True)
class Page:
    width: float
    height: float
    words: tuple

    @property
    def is_drawing(self):
        """A drawing has its page for itself: the line with the name of the dwelling stands below it."""
        return not any(word.bottom < ABOVE and word.left < SIDE + 1 and word.size < 9 for word in self.words)

    @property
    def body(self):
        return [word for word in self.words if word.bottom > ABOVE and word.top < self.height - BELOW]


def pages_of(path):
    said = subprocess.run(["pdftotext", "-bbox", str(path), "-"], capture_output=True, text=True, check=True).stdout
    pages = []
    for width, height, inside in re.findall(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', said, re.S):
        numbers = r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>'
        words = [Word(*map(float, place), text) for *place, text in re.findall(numbers, inside)]
        pages.append(Page(float(width), float(height), tuple(words)))
    return pages


def beyond_the_margins(page, labels):
    side = PRINTABLE if labels or page.is_drawing else SIDE - 0.5
    for word in page.words:
        if word.left < side or word.right > page.width - side or word.top < PRINTABLE - 2 or word.bottom > page.height - PRINTABLE + 8:
            yield f"`{word.text}` stands beyond the margin, at {word.left:.0f} to {word.right:.0f}, {word.top:.0f} to {word.bottom:.0f}"
    if not (labels or page.is_drawing):
        for word in page.words:
            # The number of the page stands there alone, at the right.
            if word.bottom > page.height - BELOW and word.left < page.width - SIDE - 70:
                yield f"`{word.text}` stands in the foot of the page"


def words_on_words(page):
    words = sorted(page.words, key=lambda word: word.top)
    for position, one in enumerate(words):
        for other in words[position + 1 :]:
            if other.top >= one.bottom:
                break
            # What of the box no letter reaches: a fifth above, and as much below the base line.
            least = 0.3 * min(one.size, other.size)
            across = min(one.right, other.right) - max(one.left, other.left)
            down = min(one.bottom, other.bottom) - max(one.top, other.top) - least
            if across > HAIR and down > HAIR:
                yield f"`{one.text}` and `{other.text}` stand on one another at {one.left:.0f}, {one.top:.0f}"


def heading_at_the_foot(page):
    if page.is_drawing or not page.body:
        return
    foot = max(word.bottom for word in page.body)
    for last in page.body:
        if last.bottom > foot - 2 and last.size >= HEADING:
            yield f"the heading with `{last.text}` ends its page"


def parted_from_what_it_leads_to(page, following):
    """A heading and a line or two end a page, and what the next page begins with belongs to it: it is no heading of its rank."""
    if page.is_drawing or following is None or following.is_drawing or not page.body or not following.body:
        return
    headings = [word for word in page.body if word.size >= HEADING]
    if not headings:
        return
    last = max(headings, key=lambda word: word.bottom)
    below = {round(word.bottom / 4) for word in page.body if word.top >= last.bottom - 2}
    begins = min(following.body, key=lambda word: word.top)
    rank = max(word.size for word in following.body if word.top < begins.bottom)
    if 0 < len(below) <= LEAST_BELOW and rank < last.size - 1:
        yield f"the heading with `{last.text}` is parted from what it leads to"


def half_empty(page, following):
    if page.is_drawing or following is None or following.is_drawing or not page.body:
        return
    ends = max(word.bottom for word in page.body)
    if ends < LEAST_FILLED * page.height:
        yield f"it ends at {100 * ends / page.height:.0f} % of its height"


def faults_of_layout(path, labels=False):
    return faults_of_pages(pages_of(path), labels)


def faults_of_pages(pages, labels=False):
    found = []
    for number, page in enumerate(pages):
        following = pages[number + 1] if number + 1 < len(pages) else None
        checks = [beyond_the_margins(page, labels), words_on_words(page)]
        if not labels:
            checks += [heading_at_the_foot(page), parted_from_what_it_leads_to(page, following), half_empty(page, following)]
        for check in checks:
            found.extend(f"page {number + 1}: {fault}" for fault in check)
    return found


def unnoticed(pages):
    """Forges pages with each of the faults, and tells which of them the checks do not see."""
    page, following = pages[0], pages[1]
    lines = sorted(page.body, key=lambda word: (word.bottom, word.left))
    last = lines[-1]
    others = tuple(word for word in page.words if word is not last)
    forged = {
        "beyond the right margin": replace(last, left=page.width - SIDE - 5, right=page.width - SIDE + 5),
        "beyond the left margin": replace(last, left=SIDE - 9, right=SIDE + 9),
        "in the foot of the page": replace(last, left=60, right=80, top=page.height - 36, bottom=page.height - 27),
        "off the paper": replace(last, left=page.width - 60, right=page.width + 12),
        "on another word": replace(last, left=lines[0].left, right=lines[0].right, top=lines[0].top, bottom=lines[0].bottom),
        "a heading at the foot": replace(last, top=last.bottom - 14),
    }
    missed = []
    for name, word in forged.items():
        if not faults_of_pages([replace(page, words=others + (word,)), following]):
            missed.append(name)
    # The last heading of the page with what stands in the line below it, and then a page that goes on.
    heading = max((word for word in page.body if word.size >= HEADING), key=lambda word: word.bottom)
    cut = tuple(word for word in page.words if word.bottom < heading.bottom + 20 or word.top > page.height - BELOW)
    goes_on = replace(following, words=tuple(word for word in following.words if word.size < HEADING))
    if not any("parted" in fault for fault in faults_of_pages([replace(page, words=cut), goes_on])):
        missed.append("a heading that is parted from what it leads to")
    upper = tuple(word for word in page.words if word.bottom < 0.45 * page.height or word.top > page.height - BELOW)
    if not faults_of_pages([replace(page, words=upper), following]):
        missed.append("a page half empty")
    return missed
