package pipeline_test
import ("testing";"fmt";"errors";"forel/cmd/pipeline";"forel/cmd/jobfile";"pgregory.net/rapid")
func TestYY(t *testing.T){
 for _, seed := range []int{370,2287,2610,2929} {
  w := rapid.Custom(anyWish).Example(seed)
  _, err := pipeline.Cutlist{Job: w.job()}.Make(t.Context())
  var bad jobfile.Issues
  errors.As(err,&bad)
  fmt.Println(err)
  next,_ := w.mended(bad)
  fmt.Println(next.file())
  _, err = pipeline.Cutlist{Job: next.job()}.Make(t.Context())
  fmt.Println(err)
  errors.As(err,&bad)
  next,_ = next.mended(bad)
  _, err = pipeline.Cutlist{Job: next.job()}.Make(t.Context())
  fmt.Println("third",err)
 }
}
