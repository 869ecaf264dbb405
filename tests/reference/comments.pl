# This house writes plain `//` above what it declares and beside members; Doxygen wants `///` and `///<`.
# A comment that stands for itself (before an empty line, a brace, a section or a directive) stays what it is.
use strict;
use warnings;

sub escaped {
  my ($text) = @_;
  $text =~ s/([\\<>#%&\$@*_])/\\$1/g;
  $text =~ s/\\@(pre|throw|return|param)\b/\@$1/g;
  $text =~ s/`([^`]*)`/my $code = $1; $code =~ s,\\(.),$1,g; "`$code`"/ge;  # taken as written already
  return $text;
}

my (@held, $beside);  # comment lines whose sense the next line decides; column of a comment beside a member
my $in_head = 1;
sub release {
  my ($documents) = @_;
  print $documents ? "$_->[0]///" . escaped($_->[1]) . "\n" : "$_->[0]//$_->[1]\n" for @held;
  @held = ();
}

while (my $line = <>) {
  chomp $line;
  if ($line =~ m{^( *)//(?!/)(.*)$}) {
    if ($in_head) {  # the file's own words come first in it
      print "/// \@file\n" if $. == 1;
      print '///', escaped($2), "\n";
    } elsif (defined $beside && length($1) == $beside) {  # goes on beside a member
      print "$1///<", escaped($2), "\n";
    } else {
      undef $beside;
      push @held, [$1, $2];
    }
    next;
  }
  $in_head = 0;
  release($line !~ /^ *(?:$|[}#]|namespace|private:|public:|protected:|using namespace|static_assert|friend)/);
  # A member with `;`, an enumerator or parameter with or without `,`, a function's body in one line; no statement.
  if ($line =~ m{^ *(?:struct|class|enum)\b.*\{ {2}// (.*)$}) {
    print '/// ', escaped($1), "\n", $line =~ s{ {2}// .*}{}r, "\n";
  } elsif ($line =~ m{^( *(?!return\b|\}|if\b|for\b|const auto\b).*?(?:;|,|\w|\}) {2,})// (.*)$}) {
    $beside = length $1;
    print "$1///< ", escaped($2), "\n";
  } else {
    undef $beside;
    print "$line\n";
  }
}
release(0);
