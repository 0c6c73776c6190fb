// Package rolling calls the next four of the rolling flow, in which a court that frees is filled at once.
package rolling
