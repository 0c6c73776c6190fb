package design

// wheels are base rounds of plans that turn into themselves, for nights on which a plain search of a
// tenth of a second finds nothing as good. They were found by simulated annealing of the base rounds
// (cmd/starters -wheel), some within moments and some after minutes.
var wheels = []wheel{
	{
		people: 11, tables: 2, rounds: 10, meetings: 75, order: 2, circles: []int{2, 2, 2, 2, 2},
		bases: []string{
			"A708 3465",
			"8195 A260",
			"1382 79A4",
			"6140 7592",
			"8726 53A0",
		},
	},
	{
		people: 13, tables: 2, rounds: 12, meetings: 66, order: 13, circles: []int{13},
		bases: []string{
			"8274 6AB0",
		},
	},
	{
		people: 15, tables: 1, rounds: 13, meetings: 0, order: 15, circles: []int{15},
		bases: []string{
			"4970",
		},
	},
	{
		people: 15, tables: 1, rounds: 14, meetings: 0, order: 15, circles: []int{15},
		bases: []string{
			"1A85",
		},
	},
	{
		people: 15, tables: 3, rounds: 12, meetings: 120, order: 3, circles: []int{3, 3, 3, 3, 3},
		bases: []string{
			"B246 8C71 39EA",
			"AC92 B037 D541",
			"CD69 402E 785A",
			"D0E8 B712 63C5",
		},
	},
	{
		people: 16, tables: 3, rounds: 12, meetings: 96, order: 4, circles: []int{4, 4, 4, 4},
		bases: []string{
			"CB01 EDA5 8236",
			"5976 ADE8 F204",
			"4B83 7FD1 5C2A",
		},
	},
	{
		people: 17, tables: 3, rounds: 14, meetings: 116, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"2ED6 B4A7 095G",
			"1B02 D53F AC8E",
			"BGC2 1697 E0F4",
			"D750 A4G9 8326",
			"AF69 1GE7 0DBC",
			"48D9 1FB3 AE52",
			"6FGD 4257 C039",
		},
	},
	{
		people: 17, tables: 3, rounds: 16, meetings: 168, order: 4, circles: []int{4, 4, 4, 4},
		bases: []string{
			"47BG F82D 095E",
			"81G3 B406 CA72",
			"325F 9DCG 786E",
			"97DE AB28 C014",
		},
	},
	{
		people: 17, tables: 4, rounds: 12, meetings: 168, order: 3, circles: []int{3, 3, 3, 3, 3},
		bases: []string{
			"56D3 14F8 BG79 0C2A",
			"40AB 7GFD 9683 E5C2",
			"8160 C49F DB2G 5A7E",
			"9C7B 4G50 2D8E A3F1",
		},
	},
	{
		people: 17, tables: 4, rounds: 14, meetings: 264, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"2D80 E679 GB43 A5FC",
			"A74F E8G3 2CBD 1605",
			"BFD1 4263 850E G7A9",
			"48D9 A0B3 CGF6 E271",
			"9CEB 15GF 284A 7D03",
			"DF3E 2690 C547 G81A",
			"0F92 E46A 5DG1 78BC",
		},
	},
	{
		people: 17, tables: 4, rounds: 15, meetings: 312, order: 3, circles: []int{3, 3, 3, 3, 3},
		bases: []string{
			"0F13 29D4 5A6B 7C8G",
			"B208 G95F 3DC1 E76A",
			"GC2A E1FB 759D 3460",
			"4078 AC5G 9B2E DF36",
			"260G DC14 EB8F 9573",
		},
	},
	{
		people: 18, tables: 3, rounds: 15, meetings: 117, order: 3, circles: []int{3, 3, 3, 3, 3, 3},
		bases: []string{
			"H18F BEA6 5740",
			"0528 739F GCD1",
			"H6C8 EA5F B04D",
			"1G92 357D AF4B",
			"9608 DCA1 4GHE",
		},
	},
	{
		people: 18, tables: 3, rounds: 16, meetings: 136, order: 4, circles: []int{4, 4, 4, 4, 2},
		bases: []string{
			"150E D69A 837H",
			"70F6 4258 GCEB",
			"1B9D H4E6 G3A2",
			"F3C1 05HB D78E",
		},
	},
	{
		people: 18, tables: 4, rounds: 12, meetings: 135, order: 6, circles: []int{6, 6, 6},
		bases: []string{
			"2F0C H95D 7BGA 8436",
			"CD56 4271 FH08 E3A9",
		},
	},
	{
		people: 18, tables: 4, rounds: 14, meetings: 213, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"FBDA 492E 638C 0GH5",
			"4F7C 3HE8 1A62 G905",
			"B1GC E32D 8A75 F604",
			"1D4C GB30 H796 A5F8",
			"8GED 5624 HFB7 3190",
			"1E7F D3H6 2B80 9A5C",
			"GA43 E0CH 8D79 165B",
		},
	},
	{
		people: 19, tables: 3, rounds: 16, meetings: 117, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"H503 4FE6 A2I1",
			"8D3E 71BC 9GA6",
			"H459 8EI2 F01A",
			"3819 GCIB 27D6",
			"5A9B CF0G E4IH",
			"DG79 5681 243C",
			"40I7 C5EA FHB2",
			"H63G C1D9 78AF",
		},
	},
	{
		people: 19, tables: 4, rounds: 6, meetings: 0, order: 6, circles: []int{6, 6, 6},
		bases: []string{
			"BHDA 7I1C 8564 20FG",
		},
	},
	{
		people: 19, tables: 4, rounds: 14, meetings: 169, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"ECD0 A517 H2I8 36GF",
			"295B 807G I4C6 A1HE",
			"B3C7 D4A9 EIF8 056H",
			"6158 GB4E F7DH 2CA3",
			"GCAH 435E D968 21I0",
			"A7IB C9F2 18G3 5D0E",
			"4GDI 62E7 F0A8 5H39",
		},
	},
	{
		people: 19, tables: 4, rounds: 15, meetings: 207, order: 3, circles: []int{3, 3, 3, 3, 3, 3},
		bases: []string{
			"ID89 12F7 5C4B 3EHG",
			"19GC FB62 7A50 8D34",
			"D67H C9FA 2EIG 1B03",
			"763G 5H2I 4DE0 CBA8",
			"BI74 615A F9H3 82CE",
		},
	},
	{
		people: 20, tables: 4, rounds: 14, meetings: 146, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"5JGC A07D E1FB 4936",
			"GA9I 352D 78E4 CJ0H",
			"7AH6 30BG J2I1 C5F9",
			"EHIC 38F6 J9DB G5A4",
			"BCA2 16EJ 735I H890",
			"IB4F J38A 2GE0 D17C",
			"G62H JF47 8015 93EC",
		},
	},
	{
		people: 20, tables: 4, rounds: 15, meetings: 170, order: 5, circles: []int{5, 5, 5, 5},
		bases: []string{
			"CHJD 21IF B64G EA37",
			"8EC4 6JB7 5F0G IH39",
			"AC9I B031 2785 46HD",
		},
	},
	{
		people: 20, tables: 4, rounds: 16, meetings: 204, order: 8, circles: []int{8, 8, 4},
		bases: []string{
			"CADJ 3HI6 02B4 7GE9",
			"GF32 0E78 6B1C D5H9",
		},
	},
	{
		people: 20, tables: 5, rounds: 12, meetings: 171, order: 6, circles: []int{6, 6, 6},
		bases: []string{
			"7C3J H9B4 16FI G580 2EAD",
			"E48I DFG1 0923 JB5C 76HA",
		},
	},
	{
		people: 21, tables: 3, rounds: 14, meetings: 42, order: 7, circles: []int{7, 7, 7},
		bases: []string{
			"95BC 76GD FHAI",
			"835J 90F4 EK12",
		},
	},
	{
		people: 21, tables: 3, rounds: 15, meetings: 60, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"6HA3 G702 K91D",
			"E54F A8CB HI9J",
			"J317 5K62 DC0G",
			"FI38 0A94 GBHE",
			"13G9 6C7K 25DJ",
		},
	},
	{
		people: 21, tables: 4, rounds: 9, meetings: 9, order: 9, circles: []int{9, 9, 3},
		bases: []string{
			"D6EJ 23GK F5HB 1A84",
		},
	},
	{
		people: 21, tables: 4, rounds: 16, meetings: 174, order: 4, circles: []int{4, 4, 4, 4, 4},
		bases: []string{
			"240A 6IJ5 G3C9 8D7F",
			"BH09 JGE1 8CK5 FI67",
			"634A 12CD 5GKF H98E",
			"EIG2 691F 8HB7 K03J",
		},
	},
	{
		people: 21, tables: 5, rounds: 14, meetings: 217, order: 7, circles: []int{7, 7, 7},
		bases: []string{
			"9325 F47I EB6K 18AH C0DJ",
			"GBC3 E2IJ 4H06 FK7A D859",
		},
	},
	{
		people: 21, tables: 5, rounds: 15, meetings: 270, order: 15, circles: []int{15, 5},
		bases: []string{
			"21E6 4GBF 3895 0IAK JDH7",
		},
	},
	{
		people: 22, tables: 2, rounds: 15, meetings: 0, order: 5, circles: []int{5, 5, 5, 5},
		bases: []string{
			"JGEA 8B0K",
			"F92L 3HI1",
			"45E0 7G8D",
		},
	},
	{
		people: 22, tables: 4, rounds: 8, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 2},
		bases: []string{
			"FCLG 9AE5 380K 1DJB",
			"J86L 2I7H G3DA C145",
		},
	},
	{
		people: 22, tables: 4, rounds: 9, meetings: 3, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"CF9H E083 6G71 2IBA",
			"CKE2 8B1L D439 6J5I",
			"5FLK 6AH3 I97E 42G0",
		},
	},
	{
		people: 22, tables: 4, rounds: 11, meetings: 33, order: 11, circles: []int{11, 11},
		bases: []string{
			"5B16 C9FL 4H2D 08IJ",
		},
	},
	{
		people: 22, tables: 5, rounds: 9, meetings: 39, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"69DA L1G3 IBHJ 4FEC 8572",
			"A1HF E8L9 JD2C 403B K5I7",
			"EG7J B6H5 9I20 F18D K3CL",
		},
	},
	{
		people: 22, tables: 5, rounds: 14, meetings: 189, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"K2GL 3746 0B8I FDJE 5H1C",
			"7C3A GEH4 0FLD 5J6K B829",
			"KFJ6 2H80 L35D 14IA BE9G",
			"D8KC 5F49 HJ2I 7BLE G160",
			"7F1B K835 9I6L ADG2 JC40",
			"JA4B F8G7 6IHD 0C95 E231",
			"9D7H J18L KAE0 6B34 CI2F",
		},
	},
	{
		people: 23, tables: 2, rounds: 15, meetings: 0, order: 5, circles: []int{5, 5, 5, 5},
		bases: []string{
			"EG9F IKA0",
			"D651 3HMC",
			"470F EI8L",
		},
	},
	{
		people: 23, tables: 4, rounds: 9, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"IK7E 96H5 MF8D AGC0",
			"GD72 BK90 HF4J E31L",
			"7604 C39D 52IM KL8A",
		},
	},
	{
		people: 23, tables: 5, rounds: 16, meetings: 231, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"IF4E D5B9 MC7L 081A G23K",
			"351M 4L62 J9IG C8BD 7EH0",
			"B7FL 136J K4DE IMH9 AG50",
			"4B56 721C 38IL GFKH M9E0",
			"EI15 F39C 7MKB H6JA DL0G",
			"L859 B2AE D37J M4GC 0IFK",
			"8B3E 719G LJAK 2HFD 5I6C",
			"CB0J 97E6 D4L1 82G5 MAI3",
		},
	},
	{
		people: 24, tables: 4, rounds: 9, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"IJ6F 2AM3 DN18 H79B",
			"46DM K10E CFG5 HLNA",
			"9DCK 35IB 4782 1HMJ",
		},
	},
	{
		people: 24, tables: 4, rounds: 10, meetings: 3, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"612D J8L9 0AFH IE34",
			"804G FLM1 7AK5 BJCN",
			"HIC6 3AGL KD4F 279E",
			"F7IB M0JH C81A 5D3N",
			"9A4N L02I HD8E 6KMG",
		},
	},
	{
		people: 24, tables: 5, rounds: 9, meetings: 9, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"G8LM 4CB2 HFK0 56EI NDJ1",
			"98IA B5DH EM47 C16K N203",
			"F54J IKAN L9CH 07G6 8B3M",
		},
	},
	{
		people: 24, tables: 6, rounds: 14, meetings: 231, order: 7, circles: []int{7, 7, 7},
		bases: []string{
			"DH4I M7C6 182L G95A 3FKJ N0BE",
			"7LJH 8B31 4DEN CA9I MK5G 60F2",
		},
	},
	{
		people: 24, tables: 6, rounds: 15, meetings: 276, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"LJNC 9A82 4FBD 5IH7 E10K M63G",
			"03DI 7FA1 65MB HNK8 LG29 4JCE",
			"5AMF I2L7 D9EN 4G0C 3861 JBHK",
			"MC91 KL53 2F0N DJ67 BI4A EG8H",
			"BK7A 62E5 8CNM 409F J13L DGIH",
		},
	},
	{
		people: 24, tables: 6, rounds: 16, meetings: 332, order: 8, circles: []int{8, 8, 8},
		bases: []string{
			"E4C5 63IG M8DL J0NB 9FHA 71K2",
			"1L7F JAE3 NI84 M95K 0DHG 2B6C",
		},
	},
	{
		people: 25, tables: 4, rounds: 10, meetings: 0, order: 10, circles: []int{10, 10, 5},
		bases: []string{
			"C1OA HB4I 6M8E 03KF",
		},
	},
	{
		people: 25, tables: 4, rounds: 15, meetings: 60, order: 5, circles: []int{5, 5, 5, 5, 5},
		bases: []string{
			"B4CN AFGM 7HL5 1IK2",
			"63JO 8209 ADH4 C5EM",
			"4JE9 FNL1 O5KB IAG7",
		},
	},
	{
		people: 25, tables: 5, rounds: 10, meetings: 10, order: 5, circles: []int{5, 5, 5, 5, 5},
		bases: []string{
			"MKJ7 N4O2 9F3H A581 EC6L",
			"1CGH 0NAI 437B FEDO LJ59",
		},
	},
	{
		people: 25, tables: 6, rounds: 9, meetings: 27, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"519I C208 FGNB ED4H M37J KOLA",
			"8O1H G2M5 LNC7 6B34 AE0I DKJF",
			"90MF 68JG E3OL KCH5 42NI BDA7",
		},
	},
	{
		people: 25, tables: 6, rounds: 15, meetings: 240, order: 5, circles: []int{5, 5, 5, 5, 5},
		bases: []string{
			"I2NK 738D MH40 OEBA 5LF1 CJ69",
			"B7JM 83A1 F20O G4EC K6HI L9N5",
			"OAN3 DJKG 18HC 6EF0 MLB9 7I45",
		},
	},
	{
		people: 25, tables: 6, rounds: 16, meetings: 282, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"25EB 7G68 NHJM CFDK 149I 0OA3",
			"DL5J GBCH NI70 3146 2EAK 9OFM",
			"K4LG 06DM 5FAN IH3E 87C2 JO9B",
			"G108 FLB6 N9A2 5DM4 K73J ICHO",
			"824J 9MKB 0LO7 5A6C H3DN 1FIE",
			"E849 BHM0 6NKO FD21 G573 AJLI",
			"ID8B 47JH K90G F6OC E1N5 3LM2",
			"2D0I JEM6 8KHF 4G3O A1B7 NLC9",
		},
	},
	{
		people: 26, tables: 4, rounds: 11, meetings: 0, order: 13, circles: []int{13, 13},
		bases: []string{
			"831L P4IK EOCN 67GA",
		},
	},
	{
		people: 26, tables: 4, rounds: 12, meetings: 0, order: 13, circles: []int{13, 13},
		bases: []string{
			"O4NE I9KP 06L8 BG2C",
		},
	},
	{
		people: 26, tables: 4, rounds: 13, meetings: 0, order: 13, circles: []int{13, 13},
		bases: []string{
			"1GOM FEI9 0BP5 4K73",
		},
	},
	{
		people: 26, tables: 4, rounds: 15, meetings: 35, order: 5, circles: []int{5, 5, 5, 5, 5},
		bases: []string{
			"9P63 7JNL 42EK HCBF",
			"5IB9 1AC8 OG4F LD0M",
			"8KJ1 273H PINB 6OE9",
		},
	},
	{
		people: 26, tables: 5, rounds: 9, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"GPE0 BACF 7ON5 6192 DJ34",
			"OI1E KHJ8 CL0N A5D6 GMF3",
			"ILA4 6NBP 0FJ9 M7CK 2G58",
		},
	},
	{
		people: 26, tables: 5, rounds: 12, meetings: 36, order: 6, circles: []int{6, 6, 6, 6, 2},
		bases: []string{
			"M7JK DPN9 3GAH 1I04 C2FL",
			"2DHI 3OF7 6098 PAK5 BGME",
		},
	},
	{
		people: 26, tables: 6, rounds: 8, meetings: 4, order: 8, circles: []int{8, 8, 8},
		bases: []string{
			"BP7I OJ94 DAC2 K8LG 106M NH5E",
		},
	},
	{
		people: 26, tables: 6, rounds: 9, meetings: 15, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"K72I PA60 1OD3 EF5H 4NB9 MGJL",
			"IGB6 02F9 L183 M7CO KD5P ENAJ",
			"H68C GKO9 53J2 7L4A F1MP 0DEB",
		},
	},
	{
		people: 26, tables: 6, rounds: 10, meetings: 35, order: 5, circles: []int{5, 5, 5, 5, 5},
		bases: []string{
			"14NI M6PE CJDH A593 LF08 K7B2",
			"6GF8 2MI7 C04A J51P HKOE BN9L",
		},
	},
	{
		people: 26, tables: 6, rounds: 16, meetings: 251, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"EN57 FJM9 CGIL 4OH6 KD0B A812",
			"93N4 2ECF LA7K P51M 06DI HJO8",
			"MIKC 3G0A 7PHF ND25 6B81 LJE4",
			"PC8D M7LB H0KE 91FN O2I4 365G",
			"1I05 3KF2 MHG9 ONPL EBJA 7D86",
			"4D5B 1OE9 702G 8C3J FPHL MANI",
			"OD73 LM20 JP6I GBCN 84K9 A5HE",
			"659L 1EI7 2KGJ 0CHN PB83 DAFO",
		},
	},
	{
		people: 27, tables: 3, rounds: 16, meetings: 16, order: 8, circles: []int{8, 8, 8},
		bases: []string{
			"2K14 0FPJ Q3I8",
			"N6OE BHMG C7AD",
		},
	},
	{
		people: 27, tables: 4, rounds: 12, meetings: 0, order: 12, circles: []int{12, 12, 3},
		bases: []string{
			"MCF3 IHQ7 05K2 AOE9",
		},
	},
	{
		people: 27, tables: 5, rounds: 12, meetings: 18, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"9K0N DLHE F24A MPI7 1CQ8",
			"1657 4I3G 9LJF 0HOM B8AP",
			"AEQK JG1O 6NM3 D7BF 0C2L",
			"MC49 OEP5 A3J0 7HGQ I8KD",
		},
	},
	{
		people: 28, tables: 3, rounds: 15, meetings: 3, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"M368 EB7A PL92",
			"450F DQGH OCNR",
			"J93E 61IL BMPK",
			"N25A 7D0C Q4O8",
			"LKEG HP1J IFR3",
		},
	},
	{
		people: 28, tables: 4, rounds: 12, meetings: 0, order: 12, circles: []int{12, 12, 4},
		bases: []string{
			"FHKR I8E3 CP0A 62M5",
		},
	},
	{
		people: 28, tables: 4, rounds: 13, meetings: 5, order: 7, circles: []int{7, 7, 7, 7},
		bases: []string{
			"ONQA R809 P134 2JIL",
			"GK85 DFNH ICM6 70BE",
		},
	},
	{
		people: 28, tables: 5, rounds: 14, meetings: 42, order: 14, circles: []int{14, 14},
		bases: []string{
			"PGOB M7FJ EAQ4 D3K0 1H86",
		},
	},
	{
		people: 29, tables: 3, rounds: 15, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"R9JE F5ON AB37",
			"642S CD1G P8H0",
			"7IKF EQ5B JN3M",
			"A82O 0RG4 S9HL",
			"DJ5P IQN1 67ME",
		},
	},
	{
		people: 29, tables: 4, rounds: 12, meetings: 0, order: 6, circles: []int{6, 6, 6, 6},
		bases: []string{
			"Q0EA 81HO 3FG9 B2DP",
			"0IM5 7RCN LK86 DSJ4",
		},
	},
	{
		people: 29, tables: 4, rounds: 13, meetings: 6, order: 7, circles: []int{7, 7, 7, 7},
		bases: []string{
			"M31F A04C H2BS GL56",
			"ANF7 KIOE 9QJ8 RDPL",
		},
	},
	{
		people: 29, tables: 4, rounds: 14, meetings: 7, order: 7, circles: []int{7, 7, 7, 7},
		bases: []string{
			"2ASR JIDB Q748 P3C9",
			"PHE5 MLFO G612 K0NI",
		},
	},
	{
		people: 29, tables: 4, rounds: 16, meetings: 24, order: 8, circles: []int{8, 8, 8},
		bases: []string{
			"E2M5 LAF8 R3KB 9J4S",
			"HD6P O70E GIN2 CJQ1",
		},
	},
	{
		people: 29, tables: 5, rounds: 11, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"E40Q N9RP 3HJK FBLG 2CAI",
			"71A0 DQMS LO6K 8R5F C3BE",
			"OI89 5N7L 2GS4 QPH1 FJMC",
			"3I0N 5B4P KSA8 2ERJ D7F6",
		},
	},
	{
		people: 29, tables: 5, rounds: 12, meetings: 3, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"9CGE 7B3H IMFR 6L81 2SON",
			"DNKM 8BPR A04Q F5I7 21HJ",
			"DO6P J97S GLFQ 50RC EA3M",
			"O3L4 SEH5 QKBJ DI82 1A9N",
		},
	},
	{
		people: 29, tables: 5, rounds: 15, meetings: 50, order: 5, circles: []int{5, 5, 5, 5, 5},
		bases: []string{
			"BEO9 RNJ0 IF17 DM3K 26Q5",
			"N2P7 H4OS EA13 GC6J 8FLK",
			"0F64 A5S7 QBJM NDR9 HCIP",
		},
	},
	{
		people: 30, tables: 5, rounds: 11, meetings: 0, order: 12, circles: []int{12, 12, 6},
		bases: []string{
			"7Q90 OM8C RHE6 A2FK 4JSN",
		},
	},
	{
		people: 30, tables: 5, rounds: 12, meetings: 0, order: 12, circles: []int{12, 12, 6},
		bases: []string{
			"C10J 6PE4 GOKH A2NQ 8SM5",
		},
	},
	{
		people: 30, tables: 5, rounds: 15, meetings: 30, order: 15, circles: []int{15, 15},
		bases: []string{
			"A08Q IS51 MTG7 3HCD LOKE",
		},
	},
	{
		people: 30, tables: 6, rounds: 12, meetings: 18, order: 6, circles: []int{6, 6, 6, 6, 6},
		bases: []string{
			"GQKL P5SO BJT8 N2H4 6I01 DA3R",
			"GRFB I2PM NE37 980S JCA6 QDH5",
		},
	},
	{
		people: 30, tables: 7, rounds: 12, meetings: 69, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"G9JE QAM2 IRDK B14C 73N8 F5HP 6TSO",
			"PAI6 2F90 7TS1 MRGC B35K QD4O LNHJ",
			"P80J EH6D OM31 SLC2 KANF 79RB TG45",
			"PSBM TD3L I185 C96N RFJO G7H0 EQK2",
		},
	},
	{
		people: 31, tables: 5, rounds: 12, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 2},
		bases: []string{
			"5TIM FU9H O4KJ SEPD 6C72",
			"4QUN LIJ1 BG0S 93K8 HRAD",
			"5HBC 1KE2 PT96 F7O0 MR8L",
		},
	},
	{
		people: 31, tables: 5, rounds: 15, meetings: 15, order: 5, circles: []int{5, 5, 5, 5, 5, 5},
		bases: []string{
			"UEQO RS6P AINC FMD9 174H",
			"G89K 5B3O LNFT JHR2 0AES",
			"HITD 4AP3 QLM2 O79C FU16",
		},
	},
	{
		people: 31, tables: 6, rounds: 12, meetings: 6, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"EFOG CJS5 TD90 ML1P B4AQ RN63",
			"4UKO 19SN 2HER 6BJ7 T8LQ MIG3",
			"OS8H AGU0 JPED INBF 165Q 49CM",
			"F7AC 53H0 L6UD GNTK IQ9R 1J28",
		},
	},
	{
		people: 31, tables: 6, rounds: 15, meetings: 75, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"J4U1 97O5 L3T6 DSRA INH2 B8GK",
			"AFHO 19EP UDQM 5TIJ SG32 0NCK",
			"IOLM 712B 86ER C5G4 PKDH SUF9",
			"PGRI 24MT 0K1Q 5EAL D6J8 N37U",
			"2DFC 35QB NT18 L7HG POS6 M9KA",
		},
	},
	{
		people: 32, tables: 5, rounds: 15, meetings: 5, order: 5, circles: []int{5, 5, 5, 5, 5, 5},
		bases: []string{
			"2CD4 M5TB L6RV K1IN HJEQ",
			"UN3A 82FP EVG0 947I SRCO",
			"JU9R Q40T HBLK G18M D5A6",
		},
	},
	{
		people: 32, tables: 5, rounds: 16, meetings: 16, order: 16, circles: []int{16, 16},
		bases: []string{
			"R2NI CAF0 1PS8 4MGU 6LKE",
		},
	},
	{
		people: 32, tables: 6, rounds: 12, meetings: 3, order: 6, circles: []int{6, 6, 6, 6, 6, 2},
		bases: []string{
			"EQ8U TI5O A9K7 4L0G JDHR 21BS",
			"PT9G UDK4 6F1E ML7C NQ3B VIS0",
		},
	},
	{
		people: 32, tables: 6, rounds: 15, meetings: 48, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"UK2T QES6 M3ON 95G4 C08L VIPA",
			"2DHL 97US 10TP ANFJ EO8B C4RK",
			"159B NHS0 C3IQ G62A TVM8 J7PR",
			"UDKN FCVH IE41 683L GO0Q PSBM",
			"HTR5 IKF7 ACES 8V42 0L9J PGU3",
		},
	},
	{
		people: 32, tables: 6, rounds: 16, meetings: 80, order: 16, circles: []int{16, 16},
		bases: []string{
			"7JA9 6STE 8P3C H1L2 F5QN KUMV",
		},
	},
	{
		people: 33, tables: 5, rounds: 14, meetings: 2, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"PELR 1N5K H74J V8IC M6UO",
			"QED4 ASLN 9HO3 GB0C T2FW",
			"D62V EH0I KJCP M578 RU1B",
			"BP43 GQNT AU8F 7O0S LW19",
			"J2EM LTV5 H6CW 7QI1 3RKD",
			"2U0N HFBL AMP9 68QS GV4O",
			"3J8T IRAW 72HK ECO1 B5SD",
		},
	},
	{
		people: 33, tables: 5, rounds: 15, meetings: 0, order: 15, circles: []int{15, 15, 3},
		bases: []string{
			"830T CUMD K1WJ 64QA IGOS",
		},
	},
	{
		people: 33, tables: 6, rounds: 12, meetings: 0, order: 12, circles: []int{12, 12, 3, 3, 3},
		bases: []string{
			"FQ9J 0NS2 P3MA D5KT UI1H 8WL7",
		},
	},
	{
		people: 33, tables: 6, rounds: 15, meetings: 15, order: 15, circles: []int{15, 15, 3},
		bases: []string{
			"BGQK U9N7 LAE2 4SRP VTMC 650I",
		},
	},
	{
		people: 33, tables: 7, rounds: 11, meetings: 0, order: 11, circles: []int{11, 11, 11},
		bases: []string{
			"2C06 EOMA VRU3 5JN8 QHK4 IDTB 7SFG",
		},
	},
	{
		people: 33, tables: 7, rounds: 12, meetings: 18, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"WQRO 586C KDV9 3PME GIHU 2L04 T1SB",
			"W8V1 IJR3 4GP5 NOB7 F960 ADHE MC2K",
			"WMTL GN86 7S5I RF1P BQK0 EV2O 4UA9",
			"C1H4 DW8S JGMO PBI6 NFTA KUL3 E59R",
		},
	},
	{
		people: 33, tables: 7, rounds: 15, meetings: 102, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"QL2U CEF6 53K9 418R IBVW OJ7H MD0A",
			"CAJ1 VPSL BT46 HIM5 R3UF N89O 0W2G",
			"67U4 WGCO BSFH 182T PRME J0QK 3DNI",
			"SWRI D1G5 MJLF BCUA VN06 QH94 ET7P",
			"JI8G 2P4O R5LN 69M1 CH3V ADQT SKEW",
		},
	},
	{
		people: 34, tables: 5, rounds: 15, meetings: 0, order: 17, circles: []int{17, 17},
		bases: []string{
			"G3J0 8KPH V1OA RXT5 CM7E",
		},
	},
	{
		people: 34, tables: 6, rounds: 12, meetings: 0, order: 6, circles: []int{6, 6, 6, 6, 6, 2, 2},
		bases: []string{
			"9SOM HQXG NJC0 58UP IVRF B34W",
			"WMN6 5JAV DLF7 TB9C 13ES K2O8",
		},
	},
	{
		people: 34, tables: 6, rounds: 15, meetings: 15, order: 5, circles: []int{5, 5, 5, 5, 5, 5},
		bases: []string{
			"E0JQ AC8K TX1B R3PL 7USH 4VO5",
			"MTO9 VPBF WESK 2L46 D01G NI7X",
			"EUL0 BCI6 7PQA 3G8W HNOF 5R2J",
		},
	},
	{
		people: 34, tables: 6, rounds: 16, meetings: 36, order: 8, circles: []int{8, 8, 8, 8, 2},
		bases: []string{
			"KL6Q ID0G J7R9 B3CO 8254 AHSW",
			"FGQC 4H0X NRK1 P29W OTU5 E8VM",
		},
	},
	{
		people: 34, tables: 7, rounds: 12, meetings: 3, order: 6, circles: []int{6, 6, 6, 6, 6, 2, 2},
		bases: []string{
			"LHUP M9D8 2AGX CJSW ER5T Q3IK 4N7V",
			"FNCH 29US 1QL5 PDAO 43G8 M7TB W60I",
		},
	},
	{
		people: 34, tables: 7, rounds: 15, meetings: 69, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"NRIS 7J0K DC4L XTOV GHW9 A6U8 FM23",
			"MIHB X6F4 L7D3 VQWJ S850 2P19 GEOR",
			"QM7P HR0J NKDB FIWC T1UE V28L 94OA",
			"RFLQ CP8G 4S7H WA6E DN2U 53OJ 9XM0",
			"EQG1 OXID KW52 TC09 B8JR ASV3 M4UL",
		},
	},
	{
		people: 34, tables: 8, rounds: 11, meetings: 11, order: 11, circles: []int{11, 11, 11},
		bases: []string{
			"M5UO 1CE7 BGPF 46IL 2AV9 0RXJ HSW8 DT3Q",
		},
	},
	{
		people: 34, tables: 8, rounds: 12, meetings: 39, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"EQO2 IVK8 W0G7 NF1L RPHJ U9T3 5A6M SCX4",
			"3H87 WQAL D96C SRNO 5P04 T2KB EJMF 1XGV",
			"72T1 GDUR 5J8O B9IP 6NQX W3MV 0EKL FAHC",
			"I3XA 2HC5 0JVT F19O KDM4 RB6L WUEP GQS8",
		},
	},
	{
		people: 35, tables: 4, rounds: 14, meetings: 0, order: 14, circles: []int{14, 14, 7},
		bases: []string{
			"IW7B RMS9 P5FD U13K",
		},
	},
	{
		people: 35, tables: 5, rounds: 14, meetings: 0, order: 14, circles: []int{14, 14, 7},
		bases: []string{
			"0P2L BTEN 4CS7 5V9R XHJG",
		},
	},
	{
		people: 35, tables: 5, rounds: 15, meetings: 0, order: 15, circles: []int{15, 15, 5},
		bases: []string{
			"65OX YSMT GQ3A KDI8 V02B",
		},
	},
	{
		people: 35, tables: 6, rounds: 14, meetings: 0, order: 7, circles: []int{7, 7, 7, 7, 7},
		bases: []string{
			"BVSL TDRH X872 O19C A3W0 GP54",
			"NHMP 0UOS 64KE BG9R JDYQ IFWV",
		},
	},
	{
		people: 35, tables: 6, rounds: 15, meetings: 5, order: 5, circles: []int{5, 5, 5, 5, 5, 5, 5},
		bases: []string{
			"96CH LB31 USJI W047 2NQV R5XT",
			"KELQ J2XP GC1V 8UOY N6A5 MFRD",
			"TS38 I9G0 BDQ4 L7PH AWUE NKF1",
		},
	},
	{
		people: 35, tables: 7, rounds: 12, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"PQ65 J8B0 V9AT OKSG H241 YR7L E3UD",
			"DB62 9JCI WKN7 MO0X EH5Y FSVL QTU4",
			"TD8R VHQK LMPE 364A YUO2 5IS1 CXBG",
			"1OEJ NV3B 9RM2 HLGA 6W0U DP7F 5TKX",
		},
	},
	{
		people: 35, tables: 7, rounds: 14, meetings: 21, order: 7, circles: []int{7, 7, 7, 7, 7},
		bases: []string{
			"072B CFIV 4M1K GX3Y NLWT 58UJ 9OAR",
			"J7RQ L45F 3TVB PE6S NUIK W8HA YMD0",
		},
	},
	{
		people: 35, tables: 7, rounds: 15, meetings: 45, order: 15, circles: []int{15, 15, 5},
		bases: []string{
			"5EF3 LYC7 81PN J0IS XMTQ GUAB 96HW",
		},
	},
	{
		people: 35, tables: 8, rounds: 14, meetings: 77, order: 7, circles: []int{7, 7, 7, 7, 7},
		bases: []string{
			"4VHP TI0M FSGX K391 EJ5L OQ2R 7BNY 6AW8",
			"WBQD 2MJC RN49 YPUX 561T K87H FVLG I3AS",
		},
	},
	{
		people: 36, tables: 4, rounds: 16, meetings: 0, order: 16, circles: []int{16, 16, 4},
		bases: []string{
			"EOLA W8SQ 2JV0 5YHC",
		},
	},
	{
		people: 36, tables: 5, rounds: 15, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"5G9H 82NB QVMY 3WRU ESXA",
			"PIKQ 6T1L G0CF JMZD 7OE4",
			"WFS6 KBVU 2A53 NY9X T8HR",
			"5LDO M40I U1EQ 2JWC PZ7G",
		},
	},
	{
		people: 36, tables: 5, rounds: 16, meetings: 0, order: 16, circles: []int{16, 16, 4},
		bases: []string{
			"HVI1 5OKT 97ER CXBM 0ZP3",
		},
	},
	{
		people: 36, tables: 6, rounds: 14, meetings: 0, order: 15, circles: []int{15, 15, 3, 3},
		bases: []string{
			"MN2Y BQT0 4EUC 9X8H 36PG WKIS",
		},
	},
	{
		people: 36, tables: 6, rounds: 15, meetings: 0, order: 15, circles: []int{15, 15, 3, 3},
		bases: []string{
			"1FQW 4CUN RAPJ T698 Z5HI L3YE",
		},
	},
	{
		people: 36, tables: 7, rounds: 12, meetings: 0, order: 12, circles: []int{12, 12, 12},
		bases: []string{
			"XAU0 F9GP DW3S 8HMK ONZJ 1L56 7V4Q",
		},
	},
	{
		people: 36, tables: 7, rounds: 15, meetings: 30, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"OPB1 HM6S 2VEG 0KTL X54Q WN78 ZUJA",
			"A42C RSYD 7WZ1 9OTG BN3X FH8I UPKV",
			"6Q1T YAB7 E4PF VZNL DK8J 5IXS 0GM3",
			"81V5 P9JM 0ONE ZCD6 Q3RU BTH2 FWSK",
			"KOCM VTAD YGPX I02Z 3LS7 5HUE JB64",
		},
	},
	{
		people: 36, tables: 7, rounds: 16, meetings: 48, order: 16, circles: []int{16, 16, 4},
		bases: []string{
			"Z23O PGQY UA1D 9ECW 0R8N BLT5 KVI6",
		},
	},
	{
		people: 36, tables: 8, rounds: 12, meetings: 0, order: 12, circles: []int{12, 12, 12},
		bases: []string{
			"WV4G D7IB TQ0Y CN2Z 31AX 5UL6 KHRP 9ESM",
		},
	},
	{
		people: 36, tables: 8, rounds: 15, meetings: 90, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"WNSK OV1B 5TUZ PEA6 3M4H FQLD 2R8I Y09C",
			"QW5O I3BK 6TY9 SGVZ DUEJ HL17 NA24 PF0X",
			"BMAW C468 YV5H P7IO 9Z0F XKD2 1ENR TSQ3",
			"C3AT 6U2V YLMP K47F D80H WBJG RQ9X 1ISN",
			"QHIE 041O KZY8 VUSD L6WR M5CX 7NJ9 GFTB",
		},
	},
	{
		people: 37, tables: 5, rounds: 16, meetings: 0, order: 8, circles: []int{8, 8, 8, 8, 2, 2},
		bases: []string{
			"O06I NRHU YL7G 1aMV 5ZPQ",
			"UJ8A 4BX3 5E9L CT2D SFKW",
		},
	},
	{
		people: 37, tables: 6, rounds: 15, meetings: 0, order: 5, circles: []int{5, 5, 5, 5, 5, 5, 5},
		bases: []string{
			"YHU4 aD8V L6X7 A1B3 2ZJN FPE5",
			"LMGB SOY0 TER6 QVCK AIWH 3749",
			"IT7F HDK2 UJ5L QPX0 ZR8A NSa1",
		},
	},
	{
		people: 37, tables: 7, rounds: 12, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"618I 547S MYKD 20LO VANF XPQ9 aWTJ",
			"UCYB N59R VE3M H84Q 1OWK 6GSD TZ0F",
			"ZMGa 5KPC JIHA RLQE 2X8B 3OUN W7F9",
			"ZCH3 429a 7RVO UF1S EDB0 K6LN TYIX",
		},
	},
	{
		people: 37, tables: 7, rounds: 15, meetings: 18, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"6XMS W0LU 7AK4 EDYV Oa9R GCN1 5FP2",
			"3P4R G2XI WKLB ET9S QUZH O087 M5JD",
			"CaY1 BMHN 7SLJ DF6T 5VUR 3XAZ E248",
			"AW19 SK20 7FBC JGZT aI3H UEOP 5NXQ",
			"W8XJ AKIO 7HP9 ND40 SFUG RMQY L6Va",
		},
	},
	{
		people: 37, tables: 8, rounds: 15, meetings: 66, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"5QO1 9W6P CUBI MXZ4 VH7L 8SFa JT30 DN2K",
			"UVXR aY1D ZJBK MTSO 8Q29 HG4W FALP E7C3",
			"BW0N ZRF9 A18G 6CSK 2XTQ aPVI 3UMD 5O4J",
			"20LG I13W aM5B 76Y4 OCFD ZNA8 PHJX SEUT",
			"T14F H8IK 0XUD Z6QV YGC9 7SNJ LMEO B3AR",
		},
	},
	{
		people: 37, tables: 9, rounds: 14, meetings: 91, order: 7, circles: []int{7, 7, 7, 7, 7},
		bases: []string{
			"ENLB 2SUR CZ0J X846 5I1G aF9T 3QDA 7PMV OHKW",
			"2N1a EM5O SWF9 DTI7 8A40 PJKB 6QUV YLRZ CX3H",
		},
	},
	{
		people: 38, tables: 5, rounds: 16, meetings: 8, order: 16, circles: []int{16, 16, 2, 2, 2},
		bases: []string{
			"BM8X 6SFa GKDU I2Q0 O4Z9",
		},
	},
	{
		people: 38, tables: 6, rounds: 15, meetings: 0, order: 5, circles: []int{5, 5, 5, 5, 5, 5, 5},
		bases: []string{
			"SCa2 DPOZ Fb7K GEJA RV39 84M6",
			"BN3E L6aF YH4I X1QS UAWT Z05G",
			"8KRC P9JQ b2EX V67D YLUO 13MI",
		},
	},
	{
		people: 38, tables: 6, rounds: 16, meetings: 4, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 2},
		bases: []string{
			"J3aL SD62 bP4Q TGOF Z0N7 HEM5",
			"W0RL DXK8 VJUN OAYC 7HB4 P9I1",
			"GEPX QMCS 3DbH 9WT2 B5FK V6Za",
			"01DA NX5S RV27 JZ4Y BLOI U89a",
		},
	},
	{
		people: 38, tables: 7, rounds: 15, meetings: 12, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"KDRE J187 HOTI aNPV W3X9 BUFS 0MZC",
			"bCL5 7SNW AZKJ 6Ea9 QBYR GF84 O2XV",
			"GDUW PSbH BTE1 5IMF 420J OKY3 N8CQ",
			"YF6X I8bA ZTNR H09B 74VQ 5S2a ML1G",
			"8LP9 QOE0 aHDZ YVb1 MJKW 4B3C 7R5U",
		},
	},
	{
		people: 38, tables: 7, rounds: 16, meetings: 22, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"PXBI 7VOM FHQ1 DaLY WKR3 b80T J49A",
			"08UZ XDT6 5JEN 2BFM 4YKb SG7a CQPV",
			"8GDV O1SK 7B4R JILW H0M5 APa3 9CYF",
			"K8PW 7F53 OY6Z XUHV D2G1 MN9T QEIb",
		},
	},
	{
		people: 38, tables: 8, rounds: 15, meetings: 42, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"C4UB SFP5 LNEY ZK0O aM7H 8WIG V1RT Xb6Q",
			"ZFYR 390a 7DAI 58X6 1NQU 4TPE MSK2 WHJV",
			"KY81 aSEV 9TZA L54I XMOU 0bFD 7NGC PQB6",
			"EICO R9M8 Jb4S 105H YWGD 7PU2 VZ3B ALFQ",
			"2EX9 YMaI L30P WbBN C7S1 DV64 JTFO KAHG",
		},
	},
	{
		people: 38, tables: 9, rounds: 11, meetings: 0, order: 11, circles: []int{11, 11, 11},
		bases: []string{
			"5HXR WM9F ULJI DA28 EZ1S 0KaP OGb6 TN3V BQY7",
		},
	},
	{
		people: 38, tables: 9, rounds: 12, meetings: 12, order: 12, circles: []int{12, 12, 12},
		bases: []string{
			"12I6 XMJF BUHb ED30 7WG9 PO8S 4CaY NVLQ RT5K",
		},
	},
	{
		people: 38, tables: 9, rounds: 15, meetings: 108, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"QVHO EGIT b32Y 9D1F 7Z6R PABK 4WJL 0UXa CSN5",
			"7P5J OCYS BRQU ZE8V H3DM b6WK 29NL a4GA X0IF",
			"U81A bBFE XDVR 3CP4 TJ2S KO7G LYHZ aMWI 0N56",
			"ZGDB 4SJb YR9P NQTa VC7M I5FL XA63 1UHW O802",
			"A5VY KXJB OZN1 a7EP SU03 WbLQ I2DC MT96 8FRG",
		},
	},
	{
		people: 39, tables: 7, rounds: 15, meetings: 0, order: 15, circles: []int{15, 15, 3, 3, 3},
		bases: []string{
			"X19E ISYT cFBA 58HQ LDWN K73U ObG2",
		},
	},
	{
		people: 39, tables: 7, rounds: 16, meetings: 14, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 2},
		bases: []string{
			"LK3T GPUC bXAO FHc5 28a6 DE0W ZN9Q",
			"10IY bWSJ CMKX BZAH 7T48 DUOa RGFV",
			"XSD5 Na7E 9cKP 81AC BQ34 R2OM ZGL6",
			"LVS8 W1Uc H6JP MAFI 4OYZ T2Q5 0GbN",
		},
	},
	{
		people: 39, tables: 8, rounds: 13, meetings: 0, order: 13, circles: []int{13, 13, 13},
		bases: []string{
			"CF6W LZH0 15Tb aR9U DcQJ AGBO PNXM 4E27",
		},
	},
	{
		people: 39, tables: 8, rounds: 15, meetings: 27, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"ZbE0 GPNS RHc4 aCJT 6ABY DFL8 7IQX O51V",
			"6U1N KE3X AcL5 Z4MV FCG0 7WRB bPIO 9JH2",
			"HYbS TM9I aW6c JXVP N03D QBEC 587K 4OG2",
			"BFNV 7DcG JEUW 602R SACZ 9P1a TK54 bXLM",
			"6XHO ENT7 K3c9 1WAZ VRSQ 0LIJ 5GUY 84PB",
		},
	},
	{
		people: 40, tables: 6, rounds: 16, meetings: 0, order: 16, circles: []int{16, 16, 8},
		bases: []string{
			"EaC3 4Ud8 NL7A SYJV 5XHF PcQ1",
		},
	},
	{
		people: 40, tables: 7, rounds: 16, meetings: 4, order: 8, circles: []int{8, 8, 8, 8, 8},
		bases: []string{
			"3S78 IEUF HGR9 aVQb WZD2 0JYA X6KT",
			"PB5O JD61 4LSQ UcMG 2AdX VEWC 3NZI",
		},
	},
	{
		people: 40, tables: 8, rounds: 15, meetings: 20, order: 5, circles: []int{5, 5, 5, 5, 5, 5, 5, 5},
		bases: []string{
			"XK29 MHWR 1EbC DGIY 47Bc A5T8 3PJZ S0LU",
			"EZTN dUAR 0QPH V21Y 7MOF KDJC 6cIa 4bL8",
			"9D3N OSba X5Jc LKZW TH76 EVRP YUB8 0F2G",
		},
	},
	{
		people: 40, tables: 8, rounds: 16, meetings: 32, order: 16, circles: []int{16, 16, 8},
		bases: []string{
			"cJ13 aLKX AZPD dF65 N9Eb 8V4S UGBO H0MQ",
		},
	},
	{
		people: 41, tables: 7, rounds: 15, meetings: 0, order: 5, circles: []int{5, 5, 5, 5, 5, 5, 5, 5},
		bases: []string{
			"daRA N82O XPLC U1VI FM5J 7QB3 Hec6",
			"KJRY B0FO GWIa SMc2 ZTD6 X89E Vb43",
			"eCUQ VP05 6KEd HA1B JT7S 3cGL DaNX",
		},
	},
	{
		people: 41, tables: 8, rounds: 15, meetings: 3, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"EaLd H5b9 VFPe SJNB WOD2 473C K1U6 0ZXQ",
			"7bK8 ATW4 CFRE 5QSd OG9P 0MBe IZJL cVYU",
			"RXa9 bNQL Z5Te SM7U 3IBD 6YFH VdJA 142c",
			"dZ18 6GNA C9B2 P7DX ROV0 bFaT eEcK WM5Y",
			"YTCJ O7NE P6Bb MH4Z DFLU a3KQ SR82 1GI5",
		},
	},
	{
		people: 41, tables: 8, rounds: 16, meetings: 18, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"ULRQ MTJA YDd3 NH2W I14b OCa0 G7P8 S65Z",
			"9aKU Q1B8 IXJF VS27 cZLP 0GWR EOeT N5AD",
			"32MU EJ8S N4Kd YH6a 9PbX B5eW 7QOD ITcC",
			"WZV9 D084 THRd CSLb 2GKe 6QNI EYMF Ac71",
		},
	},
	{
		people: 42, tables: 5, rounds: 14, meetings: 0, order: 14, circles: []int{14, 14, 14},
		bases: []string{
			"7cLT 93Ra 1VH5 NfPF YBJD",
		},
	},
	{
		people: 42, tables: 6, rounds: 16, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 2},
		bases: []string{
			"0Jea AKRO NUEX TB7S MCfV IDLb",
			"WAE4 Z3GQ Y1Hd aU6P f258 FCc9",
			"7OeE MLYR SIKJ PbTX cDV1 N08B",
			"dL60 RU37 aXf9 5H4Z C2GW QFIA",
		},
	},
	{
		people: 42, tables: 7, rounds: 15, meetings: 0, order: 5, circles: []int{5, 5, 5, 5, 5, 5, 5, 5},
		bases: []string{
			"9I6c 470D WUb3 FLHV J2CE eGRA BN8T",
			"MV05 T3OQ S98X Kfb2 WEZA IPda Y1JL",
			"7Ncb MXLD H62G UBRf KFST CQ8a 4ZeY",
		},
	},
	{
		people: 42, tables: 7, rounds: 16, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 2, 2, 2},
		bases: []string{
			"MLVC AdYD EF16 QTIf 4WPX HUZ0 85SG",
			"40c8 aL23 TOJP 7GHK BNA5 eFVX 9RDb",
			"TdU4 fP1L K9QZ 8VD2 HMYE BaWS Ce6I",
			"GRaF 83UO dL0J b7N4 P5Z2 HWDc KXAf",
		},
	},
	{
		people: 42, tables: 8, rounds: 15, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"Z25G 7YID 1Efe 8Fba BHPN VATX 4MWU 9K0c",
			"817W ACBF IJ0f 5e6Q V9M2 GKRT SODL 3Zbd",
			"aCEG 4JRA N8eT Q3KY O12H SVPb MBcZ fXUD",
			"FXRZ INGd 0MYC eP9O 2SWa 3E6B L5T7 8HVK",
			"UPYc ENK7 bM51 VOJC AeS3 6adT HfGW D42Q",
		},
	},
	{
		people: 42, tables: 8, rounds: 16, meetings: 8, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"dKTJ U4cQ aIW0 7VCB D6H5 ZeGR bLFP 8ME2",
			"XKSF QZIL d6BY 1H9f NcJ8 TGeD OaVA 34R0",
			"b5WB HX4T 6M3G 7eA1 fSYE 2VUK OZPC QFd0",
			"CIH8 fL6R Q9AS 0JPU ZBNK FM5a TWb2 3cDY",
		},
	},
	{
		people: 42, tables: 10, rounds: 16, meetings: 104, order: 8, circles: []int{8, 8, 8, 8, 8},
		bases: []string{
			"9FKA fNYP GI7C MUaQ Lb3D Xd6c 2HOW 1RT0 B8S4 ZeJE",
			"652I H3VQ YEMR De4T LUCJ ObPA c71F SZ9d XGNK aBf0",
		},
	},
	{
		people: 43, tables: 7, rounds: 16, meetings: 0, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"OX92 JRCd gUT7 L3Ec A6bD eQVY GF0f",
			"7ZS2 W6HN PXc5 IdB1 D4aE KG8Y QM3J",
			"bPed DLFT OAgC 1KUN SXR0 f3V4 9BEM",
			"cbGU OJH8 6Q5f XI3F Z0eN 2aMP 7AYW",
			"4C91 AVKP fIEg QXd8 6GLR UDJS BT02",
			"SHbI U9YF 7VNc 1DOZ 3RgK a5LW e8MT",
			"gN5d 26C8 U03a 1PJ7 YERO fXLA QG4B",
			"JNL4 XDHY KcZT 9Q0b SWFM VGO5 aAeI",
		},
	},
	{
		people: 43, tables: 8, rounds: 15, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"WVRZ 5TG4 fJdU 6K0b Ng7e F1X9 Ea3L IQMP",
			"GQgE dBF8 ZbAX L21W 7Y36 cfOS aHDM TCKJ",
			"8Y1Q 0OR9 LBDA P5e2 KWcH IN64 bU3g VFC7",
			"CE0W UQLZ JMeF gBKS N8TR f4XD 39dc O7Ga",
			"A5UK D0Sd 2X3N 4PRE VH9Q B6a1 OIYb FZfT",
		},
	},
	{
		people: 43, tables: 8, rounds: 16, meetings: 2, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"78V9 J1O0 aW3g TE6e SfRZ QLXG KNU5 dDIA",
			"6F3Y CMA2 O9gK HI15 dNVb TPZc JD8Q R74B",
			"LfBH W72c CSGd 0UVD Ae1a JXTY M9b3 QFNE",
			"F5dM WGNe V3PO 7TIg fDc6 X18C Q4ZK RAJb",
		},
	},
	{
		people: 43, tables: 9, rounds: 15, meetings: 6, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"IOVR 47BN LgWE YSCb QZd1 fD86 MHa2 XTG3 UceJ",
			"PbAa LT4S D39d 5JNK fFEQ cR28 0XIH ZBge VMGY",
			"g0K7 QI5a 1NCX S9EG LVbe F64O WUY8 ARZJ 2fdT",
			"TaBJ U19H G4bg Q27S PLOZ A5DW C0c3 d8FK INeM",
			"NG8A V150 IDU7 9PB2 FeWT HKEO CQLR YcX6 Zf43",
		},
	},
	{
		people: 44, tables: 8, rounds: 15, meetings: 0, order: 5, circles: []int{5, 5, 5, 5, 5, 5, 5, 5},
		bases: []string{
			"DZ1C 0NPF aUI4 7BXM cGh5 VWHQ df93 Seb8",
			"hVLR Q42b NJOc 0AXK 1Mg5 6D7P aGWY EIHT",
			"ZdNR BG3e cSK7 MfVA U058 ICQ9 PEXg FLD4",
		},
	},
	{
		people: 44, tables: 8, rounds: 16, meetings: 0, order: 8, circles: []int{8, 8, 8, 8, 8, 4},
		bases: []string{
			"94Vh fZH8 cd1D gBTA 2JCO MKXa SUY7 N0We",
			"UIEc QRfJ GB4H FbZO 7AV8 MS0P aDL5 d3e6",
		},
	},
	{
		people: 44, tables: 9, rounds: 14, meetings: 0, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"INCT GR8P eQKM 5JdE 3A7Y XF2L WO1V aZh0 bUS4",
			"L5OS N6GJ XfQ8 PcYH 9bV3 UDKd F7Tg RC0A hMWB",
			"eChO WcGa 48V6 A51K fFUJ dgI2 0E9Y 7ZDL RS3H",
			"8TeA ISW0 9PgM F5GD CUZQ B7bN f134 HKJ2 aYXO",
			"EcQN H0gD KObF 29A4 edL6 a7CJ ShGV 3ZTM XIRB",
			"RUc6 M5CX GEAb FN30 Se71 hK8I Q4ag WYfd VPBJ",
			"Q5IP R72h 8SCd Da3e ULgY BEOT fAHZ KXG9 Mb0c",
		},
	},
	{
		people: 44, tables: 9, rounds: 15, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"VdCS FO0Q Aga5 8RXf 3GeK BWUN J6IE 417D YcPh",
			"6AZ8 d31Q YVb4 HThU LG2J PeBR C9Ia Wg70 DcMX",
			"2RDS 1Kb5 MeEZ 4W6P OYJU A3NH CfQc FGT8 h0IL",
			"DQEV GbUc 5BHC e61a TIMg PNL7 A2fF XdJ9 Z3RY",
			"4NQT CMFY W9KR HOZg 0A1X Vf5I 8SBa h3E7 6dcL",
		},
	},
	{
		people: 44, tables: 10, rounds: 12, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"cO4R JgZL EM29 UVBb 03e8 DHKa 7dFf hAYC T1I6 GXSQ",
			"9UKL FS2R IXJC gbNP Y51M VHO6 eTG7 DWQA Zc3f d48h",
			"O7Lh 8XM6 WaNR GKP2 cdHA Z0bT B14F JE35 SfDC QYgU",
		},
	},
	{
		people: 45, tables: 6, rounds: 16, meetings: 0, order: 8, circles: []int{8, 8, 8, 8, 8},
		bases: []string{
			"1FKf 64LM 8e5b 7Z0c 92NE 3ahD",
			"iBZV OWTJ XQdD CGUS HYPg KIAR",
		},
	},
	{
		people: 45, tables: 8, rounds: 16, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"i7JW KZCA UeaM IgN1 F2LQ dE35 4ROT BHG6",
			"cJVX 1a95 QGfU 2IYR BTb0 PSML WAdO D8he",
			"A1iD SWV5 2PNH ZG8g 4FK7 C6YO Xh3b EIaL",
			"aVCD SF1B UgJE AMhY eidR ZQ05 TK9G fcL6",
		},
	},
	{
		people: 45, tables: 9, rounds: 16, meetings: 6, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4},
		bases: []string{
			"aQDE UX3g CGeY d1fF 9Sc5 BVHi 67OK LI2J b0PA",
			"CbUZ SNTD H8OA d9Qh YJ6E cfiM K30R g1B4 WaL5",
			"4F90 IedO EhPG Y1DU MN8a fV53 QTRZ 7XH2 KJCB",
			"R7gV HbSa 2Y9A e8fK 5EiO MUI0 XcG4 PWZN CL6h",
		},
	},
	{
		people: 45, tables: 10, rounds: 15, meetings: 0, order: 15, circles: []int{15, 15, 15},
		bases: []string{
			"TJ2B OQgc iZU3 K0SE 9PW1 X8f4 7AVC GF5R eNhH L6aY",
		},
	},
	{
		people: 46, tables: 8, rounds: 16, meetings: 0, order: 8, circles: []int{8, 8, 8, 8, 8, 2, 2, 2},
		bases: []string{
			"SMWj FIEP a5dQ eRCZ D34h YA6N f72T 8B0X",
			"Kbha jV5N eIH9 JSGd 3Aic M1PO LFY2 RgUD",
		},
	},
	{
		people: 46, tables: 9, rounds: 15, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"G0B8 QRWb L34T U2Hh 6eIO DfYM PZKC 7g95 djAa",
			"CFSB 8TjZ DL7i VfHW 03eP RNGa dXJc A4UY Eb1h",
			"MQGS P249 gXZH JDRU a5Ei d67T CfAO cYI0 NKFj",
			"OFa8 56JK hgeS WALZ EB2T V3Dj 1M7C 9Ubi N40X",
			"iMPW I9dh 7XOG BNcL T1RK QCJV HF4e Yg26 3aUf",
		},
	},
	{
		people: 46, tables: 9, rounds: 16, meetings: 0, order: 8, circles: []int{8, 8, 8, 8, 8, 2, 2, 2},
		bases: []string{
			"SbT0 OHGD 5VXi hE9Q e6NK 2Wf8 ZjL1 PJaU BI7c",
			"O98M NFXH d7EY 3DB0 UgIb WeSA h2ZK 5RT4 CQLi",
		},
	},
	{
		people: 46, tables: 11, rounds: 14, meetings: 0, order: 7, circles: []int{7, 7, 7, 7, 7, 7},
		bases: []string{
			"IAha TbWD FVPU i1OS Xgd5 K6ZG N4B8 cLj0 fQ2H M9ER CJe3",
			"AJdi M8T0 KOg7 1VhL eUHD RfBa 6493 NIG5 FWCj SZ2X PYQc",
		},
	},
	{
		people: 47, tables: 9, rounds: 16, meetings: 0, order: 4, circles: []int{4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 2},
		bases: []string{
			"aEf8 LG6D RMVj hF2O BTbJ 1WZP gKHQ dU3A 7C9i",
			"6WgS aX91 YNKc TfM3 iH0h ZICQ R874 EDUP kGe5",
			"SMZh cjdE YaQJ LF5T bf4W AG9K R2Nk eVX6 U1BO",
			"HGTa D23I Sj05 J71A BkYC 4McP NZ6E Ki8e fOdg",
		},
	},
	{
		people: 47, tables: 10, rounds: 14, meetings: 0, order: 2, circles: []int{2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},
		bases: []string{
			"Ye80 Q4jV bMBF 6IA1 GDXU WdTK CLE5 chRH kNfi aO39",
			"1iWB O8HF 3PZe hT5M kVb0 aCgf JALd YS79 N6RG jU2E",
			"XO71 8CIU d5kP 0iLh QNB9 Jb4R 6SEe GWfc a2KM DZHA",
			"Z2NX LFa6 BdVO JMUf iTQE k7R3 cDY1 AbWg GSK5 hI9j",
			"g6OD 7Iid R1eC 02HS PTVX kL9W 4h83 5jfb QUZF NYJK",
			"d9bU NcTC I2G4 HiPK hZSJ EMO0 FA5Y fX36 BLge WRaD",
			"49XM Q1S8 K0U3 EHgk V7GA TjDB PfIR hY6d JFC2 ZOib",
		},
	},
	{
		people: 47, tables: 10, rounds: 15, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"Kia5 hYeL HF6J 1RO7 4PC0 ZkGV TgUA BW2f ScIj EbDd",
			"8AYK HbMe 5B9C FgLQ 1kfI JUPZ iT2X 0chO 7VEj 36Na",
			"eSd6 DX4Z 0MIA f5bV LNUO Yc19 HQaB Cg27 J3Gh RWET",
			"Y7DM 9HRZ kNCA Gfj0 WU1b Qi8e IEJL S3BK TP5O F4Vd",
			"cbZT 24G1 N57S gYJf PFWD 8aOk 6Vh9 dQCI HiAL M3jX",
		},
	},
	{
		people: 48, tables: 9, rounds: 16, meetings: 0, order: 16, circles: []int{16, 16, 16},
		bases: []string{
			"gjTK 5Y9Z HhGS RU4E 63ek IOaW B2DM cFl0 PiN8",
		},
	},
	{
		people: 48, tables: 10, rounds: 15, meetings: 0, order: 3, circles: []int{3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3},
		bases: []string{
			"14aU lELX 27h3 T5B0 NQMe K8cC OI9S RfPj iYWA gDGH",
			"C7e4 c6BJ FMXI PGUW aN8H lQ3f RdAD Vk0E SjhT bY1Z",
			"e0hG LcTg 3iVM HX6C OabB J5QI UEYR 12NP WkfK 9FZl",
			"6YQP lMAk 87WS iaeZ d1BG jIcE 5F4R 90gJ DhCO NVKT",
			"ACLB X5Nd Rb0H 4GlV hZ6W Ucef 1I7T 3aPg 2MEK 8QjF",
		},
	},
	{
		people: 48, tables: 10, rounds: 16, meetings: 0, order: 16, circles: []int{16, 16, 16},
		bases: []string{
			"O50Q kRdX 1eVZ aPWM GSLj bA78 iTCN f6hF 3IY9 EK2c",
		},
	},
	{
		people: 48, tables: 11, rounds: 16, meetings: 24, order: 16, circles: []int{16, 16, 16},
		bases: []string{
			"Yjh1 iGJa SHRX 47BI cFKd l02b N56U gkCV MAZW D8Qe T93P",
		},
	},
}
