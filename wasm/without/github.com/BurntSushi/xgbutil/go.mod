module github.com/BurntSushi/xgbutil

go 1.26
