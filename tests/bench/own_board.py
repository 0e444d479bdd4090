"""A board of the tests' own: an adapter, a diode, a store with its bleeder, a regulator, a load."""

from repairlib.bench.practice_set import read_set

TEXT = """title: test board
says: The lamp is dark.
works: The lamp lights.
feed: P1, inlet dc 0, 12 V, 100 mA
rail: lamp, at out, 5 V, 5 %
loads: I1
board: 60 x 40
fault: R1 open
part,is,from,to,value,more,rated,x,y,wide,high,plus
P1,adapter,dc,0,12 V,limit 1 A,,5,20,8,8,
D1,rectifier diode,dc,rail,10 nA,n 1.8,100 V,15,20,6,3,right
C1,reservoir capacitor,rail,0,1000 µF,ESR 50 mΩ,25 V,25,20,8,8,up
R1,bleed resistor,rail,0,2.2 kΩ,,,25,34,6,3,
U1,regulator,rail,out,5 V,dropout 2 V own 5 mA,30 V,38,20,8,5,left
C2,output capacitor,out,0,47 µF,ESR 0.3 Ω,10 V,38,32,6,6,up
I1,lamp,out,0,50 mA,load,,50,20,6,6,
"""
BOARD = read_set(TEXT)
