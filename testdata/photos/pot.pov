// One turned pot before a sweep of paper, seen by a level camera. Everything
// that changes from picture to picture comes from the command line, see
// render.sh. 1 unit = 1 mm; y up; the pot's axis is x = z = 0, its foot on y = 0.
// The frame shows a rectangle of the plane through the axis, so that the scale
// there is exact: 2*HH mm to the picture's height, whatever the distance D.
#version 3.7;
global_settings { assumed_gamma 1.0 }
#ifndef (POT) #declare POT = 1; #end      // 1 vase, 2 beaker, 3 bowl
#ifndef (D) #declare D = 1000; #end       // lens to axis
#ifndef (ZC) #declare ZC = 90; #end       // lens above the table
#ifndef (HH) #declare HH = 125; #end      // half the frame's height
#ifndef (BG) #declare BG = 1; #end        // 1 grey paper, 2 blue paper, 3 wall and wooden table
#ifndef (GLOSS) #declare GLOSS = 0; #end
#ifndef (SOFT) #declare SOFT = 1; #end    // soft shadow
#ifndef (HANDLE) #declare HANDLE = 0; #end
#ifndef (SECOND) #declare SECOND = 0; #end
#ifndef (TILT) #declare TILT = 0; #end    // roll of the camera, degrees
#ifndef (DARK) #declare DARK = 0; #end    // dark pot

camera {
  location <0, ZC, -D>
  direction z*D
  up y*2*HH
  right x*2*HH*image_width/image_height
  rotate z*TILT
}

light_source {
  <-500, 900, -900> color rgb 0.75
  #if (SOFT) area_light x*260, y*260, 9, 9 adaptive 1 jitter circular orient #end
}
light_source { <700, 500, -1200> color rgb 0.35 shadowless }

#switch (BG)
#case (1) #declare Paper = pigment { color rgb 0.72 } #break
#case (2) #declare Paper = pigment { gradient x color_map { [0 color rgb <0.10,0.22,0.45>] [1 color rgb <0.25,0.45,0.62>] } scale 3000 translate -x*1500 } #break
#case (3) #declare Paper = pigment { color rgb <0.80,0.76,0.66> } #break
#end
// table, a quarter round and the wall behind, as a sweep of paper has them
plane { y, 0 pigment { #if (BG = 3) color rgb <0.42,0.27,0.15> #else Paper #end } finish { ambient 0.12 diffuse 0.8 } }
plane { z, 500 pigment { Paper } finish { ambient 0.12 diffuse 0.8 } }

#macro Outer(T)
  #switch (POT)
  #case (1) <44 + 16*sin((170*T - 20)/27), 170*T> #break
  #case (2) #if (T < 0.25) <30 + 8*T/0.25, 25*T/0.25> #else <38 + 3*(T-0.25)/0.75, 25 + 75*(T-0.25)/0.75> #end #break
  #case (3) <30 + 52*sin(pi/2*T*0.9), 72*T> #break
  #end
#end
#declare N = 130; // chords within 0.006 mm of the curve
#declare Body = lathe {
  linear_spline 2*N+4,
  <0, 0>
  #for (I, 0, N) , Outer(I/N) #end
  #for (I, 0, N) , Outer(1 - 0.94*I/N) - <4, 0> #end
  , <0, 0.06*Outer(1).y>
}
#declare Clay = texture {
  pigment { #if (DARK) color rgb <0.05,0.07,0.10> #else color rgb <0.62,0.33,0.20> #end }
  finish { ambient 0.12 diffuse 0.75 #if (GLOSS) specular 0.9 roughness 0.004 reflection 0.08 #end }
}
union {
  object { Body }
  #if (HANDLE) torus { 26, 5 rotate x*90 translate <58, 80, 0> } #end
  texture { Clay }
}
#if (SECOND)
  object { Body texture { pigment { color rgb <0.25,0.35,0.22> } finish { ambient 0.12 diffuse 0.75 } } translate <150, 0, 30> }
#end
