package pace

import "math"

// normalCDF is the standard normal distribution function.
func normalCDF(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// normalQuantile is its inverse.
func normalQuantile(q float64) float64 { return -math.Sqrt2 * math.Erfcinv(2*q) }

// studentCDF is the distribution function of Student's t with df degrees of freedom, by the incomplete beta
// function: Abramowitz and Stegun, 26.7.1.
func studentCDF(t, df float64) float64 {
	tail := incompleteBeta(df/2, 0.5, df/(df+t*t)) / 2
	if t > 0 {
		return 1 - tail
	}
	return tail
}

// studentDensity is the density of Student's t: Abramowitz and Stegun, 26.7.
func studentDensity(t, df float64) float64 {
	above, _ := math.Lgamma((df + 1) / 2)
	below, _ := math.Lgamma(df / 2)
	return math.Exp(above-below-(df+1)/2*math.Log1p(t*t/df)) / math.Sqrt(df*math.Pi)
}

// studentQuantile is the inverse of studentCDF in t, by Newton's steps within an interval that each of them narrows; a
// step that leads out of it is replaced by halving it.
func studentQuantile(q, df float64) float64 {
	if q == 0.5 {
		return 0
	}
	low, high := -1.0, 1.0
	for studentCDF(low, df) > q {
		low *= 2
	}
	for studentCDF(high, df) < q {
		high *= 2
	}
	const least = 1e-13 // as a share: what the distribution function is good for
	t := low + (high-low)/2
	for {
		above := studentCDF(t, df) - q
		if above < 0 {
			low = t
		} else {
			high = t
		}
		next := t - above/studentDensity(t, df)
		if !(next > low && next < high) {
			next = low + (high-low)/2
		}
		if math.Abs(next-t) <= least*math.Max(1, math.Abs(t)) || next <= low || next >= high {
			return next
		}
		t = next
	}
}

// incompleteBeta is the regularised incomplete beta function I_x(a, b), by its continued fraction:
// Abramowitz and Stegun, 26.5.8, evaluated as W. J. Lentz showed (Applied Optics 15, 1976).
func incompleteBeta(a, b, x float64) float64 {
	switch {
	case x <= 0:
		return 0
	case x >= 1:
		return 1
	case x > (a+1)/(a+b+2): // where the fraction of the other tail is the faster one
		return 1 - incompleteBeta(b, a, 1-x)
	}
	lgA, _ := math.Lgamma(a)
	lgB, _ := math.Lgamma(b)
	lgAB, _ := math.Lgamma(a + b)
	front := math.Exp(lgAB-lgA-lgB+a*math.Log(x)+b*math.Log1p(-x)) / a
	const (
		tiny  = 1e-300
		terms = 500
	)
	c, d := 1.0, 1/(1-(a+b)*x/(a+1))
	h := d
	for i := 1; i < terms; i++ {
		m := float64(i)
		for _, term := range []float64{
			m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m)),
			-(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1)),
		} {
			if d = 1 + term*d; d == 0 {
				d = tiny
			}
			if c = 1 + term/c; c == 0 {
				c = tiny
			}
			d = 1 / d
			h *= c * d
		}
		if math.Abs(c*d-1) < 1e-16 {
			break
		}
	}
	return front * h
}
