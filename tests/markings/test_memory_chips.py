"""Memory chips by the numbers of the trade: bus, capacity, supply, and what is rather a value."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import memory_chip, read

KIB, MIB = 1 << 10, 1 << 20


@pytest.mark.from_memory("capacities and buses of the series of the trade")
@pytest.mark.parametrize(
    ("mark", "memory", "bus", "capacity"),
    [
        ("25Q80", "flash", "SPI", MIB),
        ("25Q16DVSIG", "flash", "SPI", 2 * MIB),
        ("25Q64", "flash", "SPI", 8 * MIB),
        ("25QH128A", "flash", "SPI", 16 * MIB),
        ("25Q256", "flash", "SPI", 32 * MIB),
        ("25Q01JV", "flash", "SPI", 128 * MIB),
        ("25L3206E", "flash", "SPI", 4 * MIB),
        ("25L12835F", "flash", "SPI", 16 * MIB),
        ("25P05", "flash", "SPI", 64 * KIB),
        ("25VF010", "flash", "SPI", 128 * KIB),
        ("25VF512", "flash", "SPI", 64 * KIB),
        ("25FL132K", "flash", "SPI", 4 * MIB),
        ("25L51245", "flash", "SPI", 64 * MIB),
        ("25QX064", "flash", "SPI", 8 * MIB),
        ("29LV128", "flash", "parallel", 16 * MIB),
        ("25VF016B", "flash", "SPI", 2 * MIB),
        ("25DF081", "flash", "SPI", MIB),
        ("26VF032B", "flash", "SPI", 4 * MIB),
        ("45DB161D", "flash", "SPI", 2 * MIB),
        ("25N01GV", "NAND flash", "SPI", 128 * MIB),
        ("25LC640", "EEPROM", "SPI", 8 * KIB),
        ("25AA1024", "EEPROM", "SPI", 128 * KIB),
        ("M95256", "EEPROM", "SPI", 32 * KIB),
        ("24C01", "EEPROM", "I²C", 128),
        ("24LC16B", "EEPROM", "I²C", 2 * KIB),
        ("24C512", "EEPROM", "I²C", 64 * KIB),
        ("24M02", "EEPROM", "I²C", 256 * KIB),
        ("93C46", "EEPROM", "three-wire", 128),
        ("93LC86", "EEPROM", "three-wire", 2 * KIB),
        ("27C256", "EPROM", "parallel", 32 * KIB),
        ("27C4001", "EPROM", "parallel", 512 * KIB),
        ("28C64", "EEPROM", "parallel", 8 * KIB),
        ("28F010", "flash", "parallel", 128 * KIB),
        ("29F040B-90", "flash", "parallel", 512 * KIB),
        ("29LV160", "flash", "parallel", 2 * MIB),
        ("29GL256", "flash", "parallel", 32 * MIB),
        ("29F4G08", "NAND flash", "parallel", 512 * MIB),
        ("39SF020A", "flash", "parallel", 256 * KIB),
        ("39VF1601", "flash", "parallel", 2 * MIB),
        ("49LF004B", "flash", "LPC or firmware hub", 512 * KIB),
    ],
)
def test_what_the_number_says(mark, memory, bus, capacity):
    chip = memory_chip(mark)
    assert (chip.memory, chip.bus, chip.capacity) == (memory, bus, capacity)


@pytest.mark.from_memory("letters of the supply")
@pytest.mark.parametrize(
    ("mark", "supply"),
    [
        ("25Q64JV", (2.7, 3.6)),
        ("25Q64JW", (1.65, 1.95)),
        ("25U6435", (1.65, 1.95)),
        ("25L6405", (2.7, 3.6)),
        ("25R8035", (1.65, 3.6)),
        ("29F040", (4.5, 5.5)),
        ("25Q64", None),
        ("25QL128", None),
        ("25LQ64CVIG", None),  # V names the body here, and the chip is for 1.8 V
        ("25Q64CWIG", None),
        ("25FS128", None),
        ("25LQ64", None),
    ],
)
def test_supply_by_its_letters(mark, supply):
    assert memory_chip(mark).supply == supply


@pytest.mark.behaviour
@pytest.mark.parametrize("mark", ["25Q64", "25Q64JV", "24C02", "29F040", "25U6435"])
def test_no_supply_is_taken_from_the_letters_alone(mark):
    reading = read(mark)[0]
    assert reading.kind == "memory-chip"
    assert "Measure its supply pin" in reading.why
    assert "chip supply" in reading.cautions


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "marking", ["25V470", "25V16", "25U16", "25R16", "25p80", "47µF 25V", "2716", "28.01F", "104K"]
)
def test_what_is_rather_another_part(marking):
    try:
        assert read(marking)[0].kind != "memory-chip"
    except RepairlibError as error:
        assert error.accepted


@pytest.mark.behaviour
def test_what_else_stands_on_the_chip_does_not_hide_its_number():
    for mark in ("25Q64\nFVSIG\n1815", "1815 25Q64", "24C02N-10SU-2.7", "s-93c46"):
        assert read(mark)[0].kind == "memory-chip", mark


@pytest.mark.behaviour
def test_a_value_on_a_memory_chip_is_refused_with_what_it_would_be():
    with pytest.raises(RepairlibError, match="elsewhere it would be 100"):
        read("104K", "memory-chip")


@pytest.mark.from_memory("512 stands for Kbit on older parts")
def test_both_capacities_of_512_are_said():
    assert "512 Mbit on others" in read("25L512")[0].why


@pytest.mark.behaviour
def test_factory_address_is_to_be_kept():
    assert "network address" in read("24AA02E48")[0].why
