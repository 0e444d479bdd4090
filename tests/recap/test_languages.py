"""Ordinary lists of six languages, and the habits of lists that are easily misread.

The words are those of service papers: common practice of the trade.
"""

import pytest

from repairlib.core.typed.headings import role_of_heading
from repairlib.recap import Board, Position, plan
from repairlib.recap.belonging import unchanged
from repairlib.recap.ratings import describe
from repairlib.recap.words import ALUMINIUM, BIPOLAR, CERAMIC, FILM, MAINS, PAPER, TANTALUM

HEADINGS = {
    "reference": "Pos. Rep. Repère Rif. Réf. Referencia Symbole",
    "value": "Wert Kapazität Valeur Capacité Valore Valor Waarde",
    "volts": "Spannung Tension Tens. Tensione Tensión Spanning",
    "quantity": "Stck. Stück Anzahl Qté Q.tà Cant. Aantal Q'ty",
    "kind": "Bezeichnung Benennung Nature Désignation Descrizione Tipo Soort Omschrijving",
    "code": "Bestell-Nr. Bestellnummer Part-No. Codice Código Bestelnr Series",
    "other": "Bem. Bemerkung Obs. Observations Note Observaciones Opm.",
}


@pytest.mark.common_practice
@pytest.mark.parametrize("role", HEADINGS)
def test_headings(role):
    for heading in HEADINGS[role].replace("Bestelnr", "Bestel-Nr.").split():
        assert role_of_heading(heading) == role, heading


KINDS = {
    ALUMINIUM: """Elko|elektrolytisch|électrochimique|chimique|cond. elettr.|elettrolitico
        |electrolítico|elco|ELECT|Al|Elko stehend Netzteil|condensateur chimique filtrage""",
    FILM: "Folie|Glimmer|plastique|poliestere|poliéster|mylar|FKP|polystyrène|styroflex|MKC",
    CERAMIC: "Ker.|keramisch|céramique|ceram.|ceramica|cerámico|CERA|disque",
    TANTALUM: "Tantal|tantale|tantalio|tántalo|tantaal",
    PAPER: "Papier|carta|papel",
    BIPOLAR: """Elko ungepolt|chimique non polarisé|elettr. non pol.|electrolítico no polarizado
        |elco bipolair|elco niet gepolariseerd|senza polarità|NP|Tonfrequenz-Elko|bipolare""",
    MAINS: "Entstörkondensator|antiparasite|filtro di rete|ontstoor|Netzfilter|filtre secteur",
}


@pytest.mark.common_practice
@pytest.mark.parametrize("kind", KINDS)
def test_kinds(kind):
    for words in KINDS[kind].split("|"):
        part = describe((("value", "10µF"), ("volts", "63"), ("kind", words.strip())))
        assert (part.kind, part.doubts) == (kind, ()), words


NOT_FITTED = """DNP|DNF|Not fitted|not mounted|NC|N.C.|nicht bestückt|n. best.|entfällt
    |entf.|unbestückt|non monté|non montato|no montado|sin montar|niet gemonteerd|vervalt
    |KETU|do not fit|omitted"""


@pytest.mark.common_practice
@pytest.mark.parametrize("words", [one.strip() for one in NOT_FITTED.split("|")])
def test_not_fitted(words):
    for row in (f"C5,{words},,", f"C5,10µF,16,{words}"):
        made = plan(f"Ref,Value,Volts,Type\nC1,10µF,16,elect\n{row}\n")
        assert [(line.what, line.why) for line in made.list.set_aside[1:]] == [("not fitted", "C5")]


@pytest.mark.common_practice
def test_nanofarads_under_a_heading_of_units_are_no_part_left_out():
    assert not plan("Ref,Value,Unit\nC1,10,nF\nC2,22,nF\n").list.set_aside[1:]


RATINGS = {
    ".001µF disc 1KV": (1e-9, 1000),
    "1n 2kV ceramic": (1e-9, 2000),
    "4n7 1,6 kV film": (4.7e-9, 1600),
    "100uF 12/15V elect": (100e-6, 12),
    "50uF 350/385V elect": (50e-6, 350),
    "470uF 6.3/8V elect": (470e-6, 6.3),
    "47/25 elect": (47e-6, 25),
    "22µF 16V Elko 105°": (22e-6, 16),
    "10uF 16V elect 29303-001": (10e-6, 16),
    "10uF 16V elect 4822 124 40435": (10e-6, 16),
}


@pytest.mark.common_practice
@pytest.mark.parametrize("text", RATINGS)
def test_figures_of_ordinary_lists(text):
    part = describe((("free", text),))
    assert (part.farad, part.volts, part.doubts) == (
        pytest.approx(RATINGS[text][0]),
        RATINGS[text][1],
        (),
    )


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "words", ["horizontal output", "vertical drive", "horizontal osc", "étage vertical", "H.OUT"]
)
def test_a_stage_of_a_television_set_is_no_build(words):
    part = describe((("value", "220µF"), ("volts", "50"), ("kind", f"elect {words}")))
    assert part.form == ""


@pytest.mark.common_practice
def test_a_column_of_builds_or_a_mounting_says_the_build():
    said = (("value", "10/16"), ("kind", "elect"), ("form", "horizontal"))
    assert describe(said).form == "axial"
    assert describe((("free", "10/16 elect vertical mounting"),)).form == "radial"
    assert describe((("free", "10/16 Elko liegend"),)).form == "axial"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text",
    [
        "0.047F 5.5V elect",
        "0.022F,5.5V",
        "0.1F 5.5V",
        "0.33F 5.5V",
        "0.01F 5.5V back-up",
        "22000µF 5.5V",
    ],
)
def test_a_memory_back_up_cell_waits(text):
    assert "memory" in plan(f"C1,{text}\n").held[0].why


@pytest.mark.common_practice
def test_a_large_electrolytic_is_no_memory_cell():
    assert plan("C1,22000uF 16V elect\n").items


@pytest.mark.common_practice
@pytest.mark.parametrize("word", ["al", "a", "à", "bis", "t/m", "÷", "to", "thru", "hasta"])
def test_what_joins_references_is_no_kind_of_part(word):
    made = plan(f"C13 {word} C16 10n ceramic\n")
    assert [item.reference for item in made.kept] == ["C13", "C14", "C15", "C16"]


@pytest.mark.common_practice
def test_equal_references_of_two_sub_boards_are_two_parts():
    text = "PLATTE A\nC1 10/16 elect\nC2 .1 film\nPLATTE B\nC1 47/25 NP\nC3 10/16 elect\n"
    made = plan(text)
    assert [(item.reference, item.new.farad) for item in made.items] == [
        ("C1", 10e-6),
        ("C1", 47e-6),
        ("C3", 10e-6),
    ]
    assert made.items[0].looks == ("this is C1 of PLATTE A",)
    assert not made.held
    assert not made.duplicates
    assert not made.items[2].looks


@pytest.mark.common_practice
def test_a_place_of_one_sub_board_is_not_that_of_another():
    """The plus of the other board's C1 would reverse this one."""
    text = "PLATTE A\nC1 10/16 elect\nPLATTE B\nC1 47/25 elect\nC3 10/16 elect\n"
    made = plan(text, Board("main", [Position("C1", plus="left"), Position("C3", plus="up")]))
    assert [item.polarity[:7] for item in made.items] == ["plus as", "plus as", "plus up"]


@pytest.mark.common_practice
def test_a_list_without_references_is_taken():
    made = plan("4x 10uF 16V elect\n2 pcs 47uF 25V NP\n")
    assert [item.reference for item in made.items] == [
        *("LINE1A", "LINE1B", "LINE1C", "LINE1D"),
        *("LINE2A", "LINE2B"),
    ]
    assert [item.new.polar for item in made.items] == [True] * 4 + [False] * 2
    assert plan("C1 10/16 elect\n4x 10uF 16V elect\n").unreadable[0].line == 2


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("line", "references"),
    [
        ("47uF 25V", ["LINE2"]),
        ("1000uF/16V", ["LINE2"]),
        ("2200uF 35V x 2", ["LINE2A", "LINE2B"]),
        ("10uF 16V (3 pcs)", ["LINE2A", "LINE2B", "LINE2C"]),
        ("2 of 10uF 16V", ["LINE2A", "LINE2B"]),
    ],
)
def test_a_line_written_from_the_board_is_taken_with_its_count(line, references):
    made = plan(f"4x 100uF 16V\n{line}\n")
    assert [item.reference for item in made.items][-len(references) :] == references
    assert len(made.items) == 4 + len(references)


@pytest.mark.common_practice
def test_a_line_written_from_the_board_is_held_where_it_is_not_understood():
    made = plan("47uF 450V\nbig one by the switch 220uF 25V\n22uF\nyellow block 335 C\nthanks\n")
    assert [item.reference for item in made.held] == ["LINE2", "LINE3"]
    (high,) = (item for item in made.items if item.cautions)
    assert high.reference == "LINE1"
    assert [row.line for row in made.unreadable] == [4]


@pytest.mark.common_practice
def test_a_page_set_in_another_layout_gives_its_values():
    text = (
        "SYMBOL   DESCRIPTION   PART NO.\n"
        "C101     ELECT 10/16   29-1047\n"
        "C203     Elect.        220/6.3\n"
    )
    assert [item.new.farad for item in plan(text).items] == [10e-6, 220e-6]


@pytest.mark.common_practice
def test_an_order_number_is_no_value():
    text = "Pos.;Art;Bestell-Nr.\nC1;Elko 10µF 16V;4711-470\nC2;Elko;29303-001\n"
    made = plan(text)
    assert [item.new.farad for item in made.items] == [10e-6]
    assert made.held[0].why.startswith("no capacitance")


@pytest.mark.common_practice
def test_a_decimal_comma_separates_no_columns():
    made = plan("C1 4,7 µF 63 V Elko\nC2 2,2 µF 50 V Elko\n")
    assert [item.new.farad for item in made.items] == [4.7e-6, 2.2e-6]


def test_a_ditto_mark_below_a_changed_line_is_a_changed_line():
    rows = "".join(f"C{n},{n}µF,16,elect\n" for n in range(1, 10))
    first = f'Ref,Value,Volts,Type\n{rows}C20,10µF,16,elect\nC21,",16,elect\n'
    same = unchanged(first.replace("C20,10µF", "C20,22µF"), first)
    assert same == {f"C{n}" for n in range(1, 10)}
