// Package night has the words of a night that is to be planned: the [Problem] with its people, courts and
// wishes, the [Round] and its games, what contradicts itself ([Contradictions]), and the [Night], which is a
// problem made ready for all who judge or plan: who is there when, who is bound to whom, what is fair in sitting out.
package night
