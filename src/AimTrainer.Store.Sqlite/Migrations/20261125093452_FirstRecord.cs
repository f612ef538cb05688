using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace AimTrainer.Store.Sqlite
{
    /// <inheritdoc />
    public partial class FirstRecord : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {

        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {

        }
    }
}
