#!/bin/sh
# Renders the test pictures with POV-Ray 3.7, those that are not there yet. The
# tests need only what is committed; delete pictures to make them again. Distances and heights are told to the
# tests by pictures.txt, which this script writes too.
set -e
cd "$(dirname "$0")"
list=pictures.txt
echo '# file pot D ZC HH tilt' > $list
shot() { # name width height declares...
  name=$1; w=$2; h=$3; shift 3
  d=1000 zc=90 hh=125 pot=1 tilt=0
  args=""
  for v in "$@"; do
    args="$args Declare=$v"
    case $v in
      D=*) d=${v#*=};; ZC=*) zc=${v#*=};; HH=*) hh=${v#*=};; POT=*) pot=${v#*=};; TILT=*) tilt=${v#*=};;
    esac
  done
  [ -f $name.jpg ] || povray +Ipot.pov +O$name.jpg +FJ +W$w +H$h +A0.05 +AM2 +R3 -D -GA Compression=90 $args >/dev/null 2>&1 || exit 1
  rm -f $name.pov-state
  echo "$name.jpg $pot $d $zc $hh $tilt" >> $list
}
shot vase-400   600 800 D=400
shot vase-600   600 800 D=600
shot vase-1000  600 800 D=1000
shot vase-2000  600 800 D=2000
shot vase-blue-gloss 600 800 D=800 BG=2 GLOSS=1
shot vase-table 600 800 D=900 BG=3
shot vase-table-gloss-dark 600 800 D=900 BG=3 GLOSS=1 DARK=1
shot vase-hard-shadow 600 800 D=900 SOFT=0
shot vase-tilt  600 800 D=900 TILT=4 HH=140
shot vase-handle 600 800 D=900 HANDLE=1
shot vase-second 900 800 D=1000 SECOND=1 HH=150
shot vase-high  600 800 D=800 ZC=240 HH=285
shot beaker-700 600 600 POT=2 D=700 ZC=60 HH=75
shot bowl-800   900 600 POT=3 D=800 ZC=50 HH=75
shot bowl-dark-grey 900 600 POT=3 D=1200 ZC=60 HH=80 DARK=1
