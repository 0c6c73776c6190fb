// Package phones shows a night on people's own phones: one small page on the local network, which draws a
// [public.View] and nothing else.
//
// A [Server] is told the newest view ([Server.Tell]) and answers from what it was told, so the desk never waits
// for a phone and never hears of one. A page works by itself: it is complete HTML, and with JavaScript it
// replaces three of its parts whenever they change, by server-sent events. There is no queue but the newest
// state: a phone that is slow misses what lies between.
//
// What comes in is read and never kept: GET and HEAD of five paths, for the one address that the organiser
// chose, and where scores may come from the courts ([Server.Courts]) the page of each court, whose form hands a score on
// to the desk. Whoever has no court's code can send nothing. Connections, streams, requests and times have limits (see [Limits]), in all and for each address.
package phones
