package main

import (
	"github.com/spf13/cobra"
)

func init() {
	cobra.EnableCommandSorting = false // the help groups commands by purpose, the usual ones first
}

// newHelp builds the command that shows the help of another, or of a topic.
func newHelp() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "Show the help of a command, or of every file form: help formats",
		Long:  `Shows what --help shows of a command. "quadrille help formats" tells of every file form.`,
		Example: `  quadrille help plan
  quadrille help formats`,
		Args: takes(0, 1, "at most one COMMAND"),
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return cmd.Root().Help()
		}
		for _, c := range cmd.Root().Commands() {
			if c.Name() == args[0] {
				return c.Help()
			}
		}
		return usagef("there is no command %s%s", quoted(args[0]), meant(args[0], append(commandNames(cmd.Root()), "formats")))
	}
	cmd.ValidArgsFunction = first(func(cmd *cobra.Command, _ []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
		return append(commandNames(cmd.Root()), "formats"), cobra.ShellCompDirectiveNoFileComp
	})
	cmd.AddCommand(newFormats())
	return cmd
}

// newCompletion builds the command that teaches a shell the commands, flags and words.
func newCompletion() *cobra.Command {
	shells := []string{"bash", "zsh", "fish", "powershell"}
	cmd := &cobra.Command{
		Use:   "completion SHELL",
		Short: "Let the tab key complete commands, flags, names and nights",
		Long: `Prints a script for bash, zsh, fish or powershell. With it the tab key completes commands and
flags, names of the club's people, its nights, and files of the right kind.`,
		Example: `  quadrille completion bash > /etc/bash_completion.d/quadrille
  quadrille completion zsh > "${fpath[1]}/_quadrille"
  quadrille completion fish > ~/.config/fish/completions/quadrille.fish
  quadrille completion powershell | Out-String | Invoke-Expression`,
		Args: takes(1, 1, "one of "+orList(shells)),
	}
	cmd.ValidArgsFunction = first(cobra.FixedCompletions(shells, cobra.ShellCompDirectiveNoFileComp))
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		root, out := cmd.Root(), cmd.OutOrStdout()
		switch args[0] {
		case "bash":
			return root.GenBashCompletionV2(out, true)
		case "zsh":
			return root.GenZshCompletion(out)
		case "fish":
			return root.GenFishCompletion(out, true)
		case "powershell":
			return root.GenPowerShellCompletionWithDesc(out)
		}
		return usagef("completion takes %s, not %s%s", orList(shells), quoted(args[0]), meant(args[0], shells))
	}
	return cmd
}
