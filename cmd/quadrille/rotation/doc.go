// Package rotation is the document in which a rotation travels: the JSON that `quadrille plan`
// prints and `quadrille audit` judges, wherever it was made. People and courts have names there;
// the scheduler counts them. This package translates both ways and decides nothing.
package rotation
