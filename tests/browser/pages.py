"""Every page of the program, for tests that walk through all of them."""

from typing import Final

ROUTES: Final = (
    "#home",
    "#home/findings",
    "#energy/use",
    "#energy/use/L11",
    "#energy/use/L39",
    "#energy/bank",
    "#energy/paste",
    "#wiring/circuits",
    "#wiring/circuits/D14",
    "#wiring/inverter",
    "#proving",
    "#papers",
    "#papers/receive",
    "#sum/conductor?current=6+A&run=16+ft&engine_space=yes",
    "#sum/drop?current=6+A&run=16+ft&size=14+AWG",
    "#sum/carrying?size=14+AWG",
    "#sum/runtime?watts=1000&capacity=280+Ah&exponent=1.03",
    "#sum/discharge?current=10+A&capacity=220+Ah&exponent=1.25",
    "#sum/inverter-loss?rating=1500+W&load=10+%25",
)
QUESTIONS: Final = tuple(f"#start/{step}" for step in (*range(1, 8), "answer"))
VIEWS: Final = ("plain", "sun", "dim-red", "dim-plain")
