"""A small set for tests that try many boards."""

from repairlib.bench import read_set

LAMP = read_set("""title: lamp board
says: It is dark.
works: The lamp lights.
feed: P1, inlet dc 0, 9 V, 100 mA
rail: lamp, at out, 5 V, 5 %
loads: I1
board: 58 x 26
fault: R1 open
fault: F1 blown
fault: J1 cracked
fault: U1 gives 3.5 V
fault: R1 wrong value 60 Ω
together: I1 short; F1 blown
part,is,from,to,value,more,rated,x,y,wide,high
P1,adapter,dc,0,9 V,limit 1 A,,5,20,8,8
F1,fuse,dc,f,50 mΩ,,0.2 A,15,20,8,3
J1,joint,f,in,20 mΩ,,,22,20,3,3
R1,resistor,in,fed,10 Ω,,,30,20,8,3
U1,regulator,fed,out,5 V,dropout 1 V own 4 mA,20 V,40,20,8,5
I1,lamp,out,0,80 mA,load,,50,20,6,6
""")
