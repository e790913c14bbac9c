"""Every page of the program, for tests that walk through all of them."""

from typing import Final

ROUTES: Final = (
    "#home",
    "#home/findings",
    "#energy/use",
    "#energy/use/L11",
    "#energy/use/L39",
    "#energy/bank",
    "#energy/charging",
    "#energy/ahead",
    "#energy/what-if",
    "#energy/paste",
    "#wiring/circuits",
    "#wiring/circuits/D14",
    "#wiring/circuits/D03",
    "#wiring/network",
    "#wiring/heavy",
    "#wiring/inverter",
    "#wiring/shore",
    "#wiring/shore/A03",
    "#wiring/shore/licensed",
    "#proving",
    "#papers",
    "#papers/receive",
    "#sum/conductor?current=6+A&run=16+ft&engine_space=yes",
    "#sum/drop?current=6+A&run=16+ft&size=14+AWG",
    "#sum/carrying?size=14+AWG",
    "#sum/runtime?watts=1000&capacity=280+Ah&exponent=1.03",
    "#sum/discharge?current=10+A&capacity=220+Ah&exponent=1.25",
    "#sum/inverter-loss?rating=1500+W&load=10+%25",
    "#sum/protection?current=16+A&size=10+AWG",
    "#sum/fault?volts=12.8+V&bank_resistance=3+mohm&run=1+m&size=2%2F0+AWG",
    "#sum/withstand?current=3000+A&time=0.1+s&size=6+AWG",
    "#sum/locked-rotor?stall_current=14+A&run=10+m&size=16+AWG&rating=7.5+A",
    "#sum/feeder?ladder=panel%2C+4+AWG%2C+3.1+m%3B+fridge%2C+10+AWG%2C+5.6+m%2C+4.6+A",
    "#sum/share?resistance=3+mohm",
    "#sum/bank?daily=51.4+Ah&days=6&depth=80+%25&daily_depth=20+%25&end_of_life=80+%25&margin=1.1",
    "#sum/sun-day?latitude=43&month=october&tilt=30&sky=cloudy",
)
QUESTIONS: Final = tuple(f"#start/{step}" for step in (*range(1, 8), "answer"))
VIEWS: Final = ("plain", "sun", "dim-red", "dim-plain")
