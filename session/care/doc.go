// Package care has what a club knows to do where play can hurt: today the heat. It reckons and advises;
// it decides nothing. Local rules and qualified people go before all that it says.
package care
