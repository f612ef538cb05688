using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace AimTrainer.Store.Postgres
{
    /// <inheritdoc />
    public partial class Programs : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "groups",
                schema: "chain",
                columns: table => new
                {
                    center_id = table.Column<int>(type: "integer", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    starts = table.Column<DateOnly>(type: "date", nullable: false),
                    ends = table.Column<DateOnly>(type: "date", nullable: false),
                    program_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    program_json = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    members = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_groups", x => new { x.center_id, x.id, x.starts });
                    table.ForeignKey(
                        name: "FK_groups_centers_center_id",
                        column: x => x.center_id,
                        principalSchema: "chain",
                        principalTable: "centers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "enrolments",
                schema: "chain",
                columns: table => new
                {
                    center_id = table.Column<int>(type: "integer", nullable: false),
                    group_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    group_starts = table.Column<DateOnly>(type: "date", nullable: false),
                    bowler_id = table.Column<long>(type: "bigint", nullable: false),
                    level = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_enrolments", x => new { x.center_id, x.group_id, x.group_starts, x.bowler_id });
                    table.ForeignKey(
                        name: "FK_enrolments_bowlers_bowler_id",
                        column: x => x.bowler_id,
                        principalSchema: "chain",
                        principalTable: "bowlers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_enrolments_groups_center_id_group_id_group_starts",
                        columns: x => new { x.center_id, x.group_id, x.group_starts },
                        principalSchema: "chain",
                        principalTable: "groups",
                        principalColumns: new[] { "center_id", "id", "starts" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_enrolments_bowler_id",
                schema: "chain",
                table: "enrolments",
                column: "bowler_id");

            migrationBuilder.CreateIndex(
                name: "IX_groups_program_id_starts",
                schema: "chain",
                table: "groups",
                columns: new[] { "program_id", "starts" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "enrolments",
                schema: "chain");

            migrationBuilder.DropTable(
                name: "groups",
                schema: "chain");
        }
    }
}
