package store

import (
	"testing"
	"time"
)

// TestPatienceIsHalfASecondUnlessAskedOtherwise.
func TestPatienceIsHalfASecondUnlessAskedOtherwise(t *testing.T) {
	if o := newOptions(nil); o.patience != 500*time.Millisecond || o.createdBy != "" {
		t.Errorf("%+v", o)
	}
	if o := newOptions([]Option{Patience(time.Minute), CreatedBy("v9")}); o.patience != time.Minute || o.createdBy != "v9" {
		t.Errorf("%+v", o)
	}
}
