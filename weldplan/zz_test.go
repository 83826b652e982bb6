package weldplan
import ("testing";"os")
func TestZZ(t *testing.T){
 f:=os.Getenv("ZZ"); if f=="" {t.Skip()}
 j,es,err:=LoadJob(f); if err!=nil {t.Fatal(err)}
 p,err:=Make(&j,es,Options{}); if err!=nil {t.Fatal(err)}
 p.Write(os.Stdout)
}
